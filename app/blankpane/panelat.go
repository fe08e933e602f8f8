package blankpane

import (
	"fyne.io/fyne/v2"

	"gussetwright/geometry/placement"
)

// PanelAt returns the panel at a place of the window that artwork can be put on, as for
// a file that is dropped there. There is none beside the pane, beside the paper and on
// the seam flap.
func (p *Pane) PanelAt(at fyne.Position) (panel string, found bool) {
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(p.surface)
	size := p.surface.Size()
	at = at.Subtract(corner)
	if at.X < 0 || at.Y < 0 || at.X >= size.Width || at.Y >= size.Height {
		return "", false
	}
	piece, on := p.desk.nearest(p.view.desk(pixelAt(at)))
	return placement.PanelAt(&p.laid().Pieces[piece], on)
}
