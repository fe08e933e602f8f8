package proof

import (
	"image"
	"io"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf"
	"gussetwright/render/report"
)

// mostPages is how long a proof may be: what is longer is not read.
const mostPages = 3

// PDF writes the proof that the client signs, one to three pages.
func (p *Proof) PDF(w io.Writer) error {
	pages, err := p.pages()
	if err != nil {
		return phrase.Errorf("make the proof: %s", err)
	}
	if err := p.ctx.Err(); err != nil {
		return phrase.Errorf("make the proof: %s", err)
	}
	return pdf.WriteReport(w, pages, pdf.Info{Title: p.title(), Date: p.Date, Language: p.language()})
}

// pages lays the proof out. Findings that would make it too long are counted instead.
func (p *Proof) pages() ([]report.Page, error) {
	b := builder{Proof: p}
	var err error
	if b.stage, err = p.onStage(pageTexture); err != nil {
		return nil, err
	}
	if b.colours, err = p.swatches(); err != nil {
		return nil, err
	}
	b.mustChange, b.mayChange = p.open()
	b.small = b.stage.smallPicture()
	for shown := len(b.mustChange) + len(b.mayChange); ; shown-- {
		pages, err := b.lay(shown)
		if err != nil || len(pages) <= mostPages || shown <= 0 {
			return pages, err
		}
	}
}

// builder lays out the pages of a proof.
type builder struct {
	*Proof
	stage                 *stage
	colours               []swatch
	mustChange, mayChange []string
	column                *report.Column
	// What every layout shows alike is drawn once.
	hero, small image.Image
	band        band
	bandPicture image.Image
}

// lay lays out all pages, with so many of the findings.
func (b *builder) lay(shown int) ([]report.Page, error) {
	b.column = report.NewColumn(b.layout())
	if err := b.cover(); err != nil {
		return nil, err
	}
	b.column.Break()
	if err := b.viewsAndColours(); err != nil {
		return nil, err
	}
	b.openPoints(shown)
	b.approval()
	return b.column.Pages()
}

var (
	dark  = report.RGB(34, 38, 42)
	faint = report.RGB(96, 104, 112)
)

const margin = 18.0 // mm

func (p *Proof) layout() report.Layout {
	return report.Layout{
		Paper: report.Usual(p.Unit), Margin: margin, Ink: dark,
		Footer: p.title() + "  ·  " + p.tell(phrase.New("Version %s", p.Version)),
		Number: func(page, of int) string { return p.tell(phrase.New("Page %d of %d", page, of)) },
	}
}
