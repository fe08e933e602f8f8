package artcheck

import (
	"gussetwright/geometry"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
)

// Pixels to the inch on paper: printers ask for Target; below Soft a picture looks
// soft, below Coarse its pixels are seen. 150 and 225 follow what is said of the
// settings for packaging and sheet-fed offset that the Ghent Workgroup published in
// 2022, of which readings differ (150 and 250; 224); 300 is common practice.
const (
	Target = 300.0
	Soft   = 225.0
	Coarse = 150.0
)

const inch = 25.4 // mm

// PixelsPerInch returns the least resolution that pictures in the artwork have where
// it is placed, and false where it holds none.
func PixelsPerInch(p *placement.Placed, art *artwork.Art) (float64, bool) {
	grown := p.Magnification(art.Source)
	if art.Raster != nil {
		size := art.Raster.Size
		across := float64(size.X) / (art.Source.Size.X * grown.X)
		down := float64(size.Y) / (art.Source.Size.Y * grown.Y)
		return min(across, down) * inch, true
	}
	if art.Document == nil {
		return 0, false
	}
	return art.Document.LeastPPI.Value / max(grown.X, grown.Y), art.Document.LeastPPI.Found
}

// sharpness looks at the pixels that the press gets for each inch.
func (l *inspection) sharpness(p *placement.Placed, art *artwork.Art) {
	ppi, has := PixelsPerInch(p, art)
	if !has || ppi >= Soft {
		return
	}
	severity, code := check.Warning, "artwork-soft"
	if ppi < Coarse {
		severity, code = check.Error, "artwork-coarse"
	}
	l.find(severity, code, p.Piece, p.Target.Center(),
		phrase.New("%q has %s pixels to the inch on the %s; %g are wanted, below %g the pixels show",
			art.Name, geometry.FormatNumber(ppi, 0), placeWord(p.Place), Target, Coarse),
		phrase.New("take a larger picture, or show it at most %s%% as large", geometry.FormatNumber(100*ppi/Target, 0)))
}
