// Package pdf writes drawings as a PDF file for production: true to scale, with
// a layer and a spot colour for each step of making, and lettering that travels
// with the file.
//
// Each layer declares its step in the way of ISO 19593-1 and overprints what
// lies beneath, so that a plate shows whole artwork under every cut. Artwork is
// placed as it is, pictures and drawings alike. With the profile of a printing
// condition the file declares PDF/X-4 too; without one it makes no such claim.
//
// Reports are pages for people to read and sign, without layers.
//
// The same drawings give the same bytes every time. Nothing is taken from the
// clock, and the file identifier is a hash of the content.
//
// Coordinates in a page are millimetres of the drawing, x to the right and y up;
// one matrix at the head of the page turns them into points.
package pdf
