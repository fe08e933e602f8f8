// Package report describes pages for people to read and sign: proofs, lessons, job
// sheets. A page is a list of texts, lines, areas and pictures at their places; a
// Column lays such pages out from headings, paragraphs, tables and pictures.
//
// Coordinates are millimetres from the lower left corner of the page, x to the right
// and y up. Nothing here knows of a file format: render/pdf writes pages as a file,
// and Draw paints one as a picture that looks the same.
//
// Lettering is that of render/typeface, so a character that its faces lack shows as a
// question mark. Text that does not fit is broken into lines and goes over to the next
// page; none is cut off.
package report
