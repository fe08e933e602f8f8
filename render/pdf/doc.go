// Package pdf writes drawings as a PDF file for production: true to scale, with
// a layer and a spot colour for each step of making, and lettering that travels
// with the file.
//
// Each layer declares its step in the way of ISO 19593-1 and overprints what
// lies beneath, so that a plate shows whole artwork under every cut. The file
// declares no more than that: it carries no output intent and makes no claim to
// be PDF/X.
//
// The same drawings give the same bytes every time. Nothing is taken from the
// clock, and the file identifier is a hash of the content.
//
// Coordinates in a page are millimetres of the drawing, x to the right and y up;
// one matrix at the head of the page turns them into points.
package pdf
