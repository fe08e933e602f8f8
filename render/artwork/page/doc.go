// Package page reads one page of a PDF file as artwork: its size and boxes, what is
// on it, a picture of it, and the page itself as vectors for another PDF file.
//
// Files come from anywhere, so the work is split in two. PDFium, compiled to
// WebAssembly, does what is dangerous: it opens the file however damaged, undoes
// encryption, copies the one page out, and draws. It runs in a sandbox without
// files, network or clock, with a limit on memory, and can be ended at any time. What
// it copied out is plain in form and is read by a small reader here, which leaves
// behind everything that is not drawn: annotations, actions, scripts, layers.
//
// Lengths are millimetres with the origin in the lower left corner of the area that
// is placed and y up, unless a name says points.
package page
