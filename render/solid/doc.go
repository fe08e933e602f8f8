// Package solid draws the folded bag as a picture: a z-buffer with perspective,
// light from one side and a soft shadow on the ground, in software on one core.
//
// Lengths in space are millimetres as in package fold, pictures are measured in
// pixels from the upper left corner. A Model is made once for each bag and never
// changed, so that one goroutine may draw it while another asks what lies under the
// pointer; a Renderer keeps its buffers between pictures and belongs to one
// goroutine.
package solid
