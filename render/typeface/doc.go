// Package typeface holds the two faces in which every drawing is lettered, Go
// Regular and Go Bold: how wide a text runs, and the small font files with just
// the glyphs that a document shows.
//
// A face is read the first time it is asked for, so that a program which writes
// no text does not wait for it. Faces do not change and may be shared between
// goroutines.
//
// A character that the face lacks shows as a question mark: a wrong letter on a
// drawing is seen and asked about, a missing one is not. There is no kerning and
// no joining of letters with accents that follow them.
package typeface
