package dxf

import "gussetwright/render/scene"

// header returns the first section: what holds for the whole file. The millimetre
// is unit 4, and measurement 1 is metric.
func (d *document) header() []byte {
	page := scene.RowMedia(d.pieces)
	var out tags
	out.text(0, "SECTION")
	out.text(2, "HEADER")
	out.variable("ACADVER")
	out.text(1, "AC1015")
	out.variable("DWGCODEPAGE")
	out.text(3, "ANSI_1252")
	out.variable("INSUNITS")
	out.whole(70, 4)
	out.variable("MEASUREMENT")
	out.whole(70, 1)
	out.variable("EXTMIN")
	out.point(10, page.Min)
	out.variable("EXTMAX")
	out.point(10, page.Max)
	out.variable("LIMMIN")
	out.corner(10, page.Min)
	out.variable("LIMMAX")
	out.corner(10, page.Max)
	out.lines(usualVariables)
	out.variable("HANDSEED")
	out.handle(5, d.next)
	out.text(0, "ENDSEC")
	return out.buffer
}

// variable writes the name of a header variable; its value follows.
func (t *tags) variable(name string) { t.text(9, "$"+name) }

// usualVariables holds what is the same in every file: decimal units and degrees,
// dashes at true length, lines shown with their weight.
const usualVariables = `
9 $LUNITS
70 2
9 $LUPREC
70 4
9 $AUNITS
70 0
9 $AUPREC
70 4
9 $LTSCALE
40 1.0
9 $CELTSCALE
40 1.0
9 $PSLTSCALE
70 1
9 $CLAYER
8 0
9 $CELTYPE
6 BYLAYER
9 $CECOLOR
62 256
9 $CELWEIGHT
370 -1
9 $TEXTSTYLE
7 STANDARD
9 $DIMSTYLE
2 STANDARD
9 $LWDISPLAY
290 1
9 $EXTNAMES
290 1
9 $TILEMODE
70 1
`
