// Package vector reads SVG artwork for a bag, draws it, and turns it into vectors
// for a PDF file.
//
// A drawing is in millimetres, x to the right and y up, with its origin at the lower
// left corner. Nothing is ever fetched and nothing runs: what would need that, and
// what cannot be shown, is told of in the notes of the drawing.
//
// Sources: Scalable Vector Graphics (SVG) 1.1 and 2 of the World Wide Web
// Consortium; Cascading Style Sheets, Color Module Level 4 and 5, for colours.
package vector
