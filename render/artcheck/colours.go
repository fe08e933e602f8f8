package artcheck

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
	"gussetwright/render/artwork/raster"
)

// Total ink in percent: 300 on coated paper (the figure of one reading of the Ghent
// Workgroup's packaging settings of 2022), 280 on what drinks more (value from
// memory, 260 to 300 are given).
const (
	mostOnCoated   = 300.0
	mostOnUncoated = 280.0
)

// mostInk returns the most ink that the paper takes, in percent.
func mostInk(paper bag.Paper) float64 {
	if paper.Kind == bag.PaperGloss || paper.Kind == bag.PaperMatt {
		return mostOnCoated
	}
	return mostOnUncoated
}

// colours warns of RGB in a job that is printed with process inks.
func (l *inspection) colours() {
	cmyk := l.spec.Profile != "" || l.spec.Print.Background.Total() > 0
	for _, piece := range l.pieces {
		cmyk = cmyk || piece.Art != nil && holdsCMYK(piece.Art)
	}
	told := map[*artwork.Art]bool{}
	for i := range l.placed {
		p := &l.placed[i]
		art := l.pieces[p.Index].Art
		if art == nil || told[art] {
			continue
		}
		told[art] = true
		l.heavy(p, art)
		if !holdsRGB(art) {
			continue
		}
		severity := check.Note
		if cmyk {
			severity = check.Warning
		}
		l.find(severity, "artwork-rgb", p.Piece, p.Target.Center(),
			phrase.New("%q holds RGB colours, which the printer has to convert", art.Name),
			phrase.New("save it in CMYK for the paper, or agree on the conversion; bright greens and blues turn duller"))
	}
}

func holdsRGB(art *artwork.Art) bool {
	switch {
	case art.Raster != nil:
		return art.Raster.Colours == raster.RGB
	case art.Drawing != nil:
		return art.Drawing.Colours.RGB
	case art.Document != nil:
		return art.Document.Colours.RGB
	}
	return false
}

func holdsCMYK(art *artwork.Art) bool {
	switch {
	case art.Raster != nil:
		return art.Raster.Colours == raster.CMYK
	case art.Drawing != nil:
		return art.Drawing.Colours.CMYK
	case art.Document != nil:
		return art.Document.Colours.CMYK
	}
	return false
}

// heavy looks for more ink in a CMYK picture than the paper takes.
func (l *inspection) heavy(p *placement.Placed, art *artwork.Art) {
	if art.Raster == nil || art.Raster.Ink == nil {
		return
	}
	most := mostInk(l.spec.Paper)
	percent, cell := art.Raster.Ink.Greatest()
	total := float64(percent)
	if total <= most {
		return
	}
	at := geometry.Vec2{
		X: (float64(cell.X) + 0.5) / float64(art.Raster.Ink.Columns),
		Y: 1 - (float64(cell.Y)+0.5)/float64(art.Raster.Ink.Rows),
	}
	l.find(check.Warning, "ink-heavy", p.Piece, p.At.At(at),
		phrase.New("%q lays down %s%% ink where it is darkest; this paper takes %g%%", art.Name, geometry.FormatNumber(total, 0), most),
		phrase.New("save it with a total ink limit of %g%%, or it sets off and dries late", most))
}

// background looks at the ink of the background.
func (l *inspection) background() {
	total, most := l.spec.Print.Background.Total(), mostInk(l.spec.Paper)
	if total > most {
		l.find(check.Warning, "background-heavy", 0, l.blank.Pieces[0].Box().Center(),
			phrase.New("the background lays down %s%% ink; this paper takes %g%%", geometry.FormatNumber(total, 0), most),
			phrase.New("take less of some inks"))
	}
}
