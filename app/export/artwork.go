package export

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
)

// printed returns the drawings with the background and the artwork beneath them.
func (o *order) printed() ([]scene.Drawing, error) {
	pages := slices.Clone(o.drawings)
	for i := range pages {
		items, err := o.printOf(i)
		if err != nil {
			return nil, err
		}
		pages[i].Items = append(items, pages[i].Items...)
	}
	return pages, nil
}

// printOf returns the background of a piece and the artwork on it. Artwork that cannot
// be shown is an error: a production file without it would be taken for complete.
func (o *order) printOf(piece int) ([]scene.Item, error) {
	if err := o.snapshot.ArtError(); err != nil {
		return nil, err
	}
	if o.snapshot.Opening() {
		return nil, phrase.Errorf("artwork is still being opened; wait a moment and write the files again")
	}
	items := o.background(piece)
	for k := range o.snapshot.Placed {
		placed := &o.snapshot.Placed[k]
		if placed.Piece != piece {
			continue
		}
		form, err := o.form(o.snapshot.Hung[placed.Index].Art)
		if err != nil {
			return nil, err
		}
		opacity := o.snapshot.Spec.Artwork[placed.Index].Opacity / 100
		items = append(items, placedItems(placed, form, opacity)...)
	}
	return items, nil
}

// form returns the artwork as it stands in files, made once for all of them.
func (o *order) form(art *artwork.Art) (*object.Form, error) {
	if form, known := o.forms[art]; known {
		return form, nil
	}
	form, err := art.Form(o.ctx)
	if err != nil {
		return nil, err
	}
	o.forms[art] = form
	return form, nil
}

// placedItems returns the artwork as an item of a drawing. A repeated file stands
// where its first copy does, and once more for each of the others.
func placedItems(p *placement.Placed, form *object.Form, opacity float64) []scene.Item {
	item := scene.Placed{Form: form, At: p.At, Clip: p.Clip.Path(), Opacity: opacity}
	if p.Copies == nil {
		return []scene.Item{item}
	}
	if len(p.Copies) == 0 {
		return nil
	}
	first := p.Copies[0]
	item.At = p.At.After(geometry.Shift(first))
	for _, step := range p.Copies[1:] {
		item.Copies = append(item.Copies, step.Sub(first))
	}
	return []scene.Item{item}
}

// background returns the ink of the whole piece, with white where glue must find bare
// paper.
func (o *order) background(piece int) []scene.Item {
	b := o.snapshot.Spec.Print.Background
	if b.Total() == 0 {
		return nil
	}
	p := &o.snapshot.Blank.Pieces[piece]
	ink := &scene.CMYK{C: b.Cyan / 100, M: b.Magenta / 100, Y: b.Yellow / 100, K: b.Black / 100}
	items := []scene.Item{scene.Fill{Role: scene.Artwork, Path: p.BleedOutline(o.snapshot.Spec.Print.Bleed), Ink: ink}}
	for _, area := range placement.InkFree(p, o.snapshot.Spec) {
		items = append(items, scene.Fill{Role: scene.Artwork, Path: area, Ink: &scene.CMYK{}})
	}
	return items
}
