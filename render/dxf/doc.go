// Package dxf writes drawings as ASCII DXF of the release AC1015 for CAD
// programs and plotters: one drawing unit is one millimetre, each role has a
// layer of its own, and every edge is a LINE, an ARC or a CIRCLE at true size.
//
// Coordinates are those of the drawing: the lower left corner of the first piece
// is the origin, x runs right and y up. AC1015 is the oldest release that can say
// that its unit is the millimetre. What stands in which section follows the DXF
// reference that Autodesk publishes for that release.
package dxf
