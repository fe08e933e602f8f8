package export

import (
	"context"
	"fmt"
	"io"
	"strings"
	"time"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/job"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/gang"
	"gussetwright/render/dxf"
	"gussetwright/render/pdf"
	"gussetwright/render/press"
	"gussetwright/render/scene"
)

// noFamily says why a project has no ganged sheets, nil where it has.
func noFamily(snapshot *document.Snapshot) error {
	spec := &snapshot.Spec
	if len(spec.Family) == 0 {
		return phrase.Errorf("the project has one bag only; add sizes to its family at the step Quote")
	}
	for i, member := range spec.Members() {
		laid := blank.Lay(member)
		piece, name := laid.SheetPiece(), nameOf(&member, i, scene.English())
		if piece.PerBag > 1 {
			// Odd numbers on a form would make more fronts than backs.
			return phrase.Errorf("%s has two seams, and its pieces must come out in equal numbers; print it on sheets of its own", name)
		}
		if !sheet.Holds(spec.Sheet, piece, 1) {
			return phrase.Errorf("the blank of %s does not fit the sheet; take a larger sheet", name)
		}
	}
	return nil
}

// nameOf returns the name of a bag of a family, or its number in a voice.
func nameOf(spec *bag.Spec, i int, voice scene.Voice) string {
	if spec.Name != "" {
		return spec.Name
	}
	return voice.Tell(phrase.New("bag %d", i+1))
}

// ganged is a family on shared sheets.
type ganged struct {
	members []*document.Snapshot
	forms   []press.Form
}

// gang lays the family on as many forms as its project asks for, or, where none were
// found that hold all bags, on as many as help.
func (o *order) gang() (*ganged, error) {
	if o.ganged != nil {
		return o.ganged, nil
	}
	var made ganged
	var items []gang.Item
	for i, spec := range o.snapshot.Spec.Members() {
		member, err := o.snapshot.Member(spec)
		if err != nil {
			return nil, err
		}
		made.members = append(made.members, member)
		items = append(items, job.GangItem(nameOf(&spec, i, o.voice), &member.Blank))
	}
	result, err := solve(o.ctx, &o.snapshot.Spec, items)
	if err != nil {
		return nil, err
	}
	for i := range result.Forms {
		made.forms = append(made.forms, o.formOf(&made, &result, i))
	}
	o.ganged = &made
	return o.ganged, nil
}

func solve(ctx context.Context, spec *bag.Spec, items []gang.Item) (gang.Result, error) {
	most := int(spec.Run.MostForms)
	result, err := gang.Solve(ctx, spec.Sheet, items, gang.Options{MostForms: most})
	if err != nil && most > 0 && ctx.Err() == nil {
		return gang.Solve(ctx, spec.Sheet, items, gang.Options{})
	}
	return result, err
}

// formOf returns a form to draw, with what is printed of it.
func (o *order) formOf(g *ganged, result *gang.Result, number int) press.Form {
	from := &result.Forms[number]
	form := press.Form{
		Sheet: result.Sheet, Fibres: from.Fibres,
		Title: o.title() + ", " + o.voice.Tell(phrase.New("form %d of %d", number+1, len(result.Forms))),
	}
	for _, placed := range from.Placements {
		form.Blanks = append(form.Blanks, press.Laid{Blank: &g.members[placed.Item].Blank, At: placed.Placement})
	}
	var parts []string
	for i, count := range from.Counts(len(result.Items)) {
		if count > 0 {
			parts = append(parts, fmt.Sprintf("%d × %s", count, result.Items[i].Name))
		}
	}
	form.Notes = []phrase.Phrase{phrase.New("%d sheets to print, without make-ready: %s", from.Run, strings.Join(parts, ", "))}
	return form
}

// writeGang writes the ganged sheets with artwork and die, a page for each form.
func writeGang(w io.Writer, o *order, _ int) error {
	g, err := o.gang()
	if err != nil {
		return err
	}
	prints := map[*blank.Blank][]scene.Item{}
	for _, member := range g.members {
		own := &order{Job: o.Job, ctx: o.ctx, snapshot: member, forms: o.forms}
		if prints[&member.Blank], err = own.printOf(0); err != nil {
			return err
		}
	}
	pages := press.Draw(g.forms, o.Date.Format(time.DateOnly), func(of *blank.Blank, _ int) []scene.Item { return prints[of] }, o.voice)
	return pdf.Write(w, pages, o.forPrinting(o.title()+", "+o.voice.Word("ganged press sheets")))
}

// writeGangDXF writes the dies of the ganged sheets beside each other.
func writeGangDXF(w io.Writer, o *order, _ int) error {
	g, err := o.gang()
	if err != nil {
		return err
	}
	return dxf.Write(w, press.Draw(g.forms, o.Date.Format(time.DateOnly), nil, o.voice))
}
