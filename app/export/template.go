package export

import (
	"io"

	"gussetwright/render/dieline"
	"gussetwright/render/pdf"
	"gussetwright/render/svg"
)

// writeTemplate writes the template that artwork is drawn on: all pieces as pages of a
// PDF file, or one of them as an SVG file.
func writeTemplate(w io.Writer, o *order, number int) error {
	pages := dieline.Templates(&o.snapshot.Blank, o.voice)
	if number == 0 {
		return pdf.Write(w, pages, pdf.Info{Title: o.title(), Date: o.Date, Template: true})
	}
	return svg.WriteTemplate(w, pages[number-1], o.voice)
}
