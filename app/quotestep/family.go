package quotestep

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
)

// family is the list of the further sizes of the design, with the entries of the one
// that is chosen.
type family struct {
	*page
	list               *steppage.Table
	listBox, followBox *veiled
	entries            *entry.Column
	follows            *entry.Text       // what follows from the chosen size
	wrong              *entry.Message    // with the chosen size, beside its entries
	add                []*steppage.Offer // a smaller and a larger size
	adds               []bag.Size        // what they add
	full               *entry.Text
	chosen             int // counted from 0; −1 for none
	loads              int // of the document for which it was chosen
	puts               []func(*bag.Size)
	fields             map[string]func(string) // complains about a part of the size
}

// mostSizes is the limit of package bag on the list.
const mostSizes = 12

func (p *page) addFamily() {
	f := &family{page: p, chosen: -1, fields: map[string]func(string){}}
	f.list = steppage.NewTable(func(i int) { f.choose(i - 1) }).WithHelp(lang.L("Family"),
		lang.L("The bag itself first, then its further sizes. The arrow keys go up and down, Enter opens the entries of a size."), p.Bench)
	f.follows, f.wrong = entry.NewText("", entry.Small), entry.NewMessage()
	f.listBox, f.followBox = newVeiled(1.5, f.list), newVeiled(0, f.follows)
	p.dims = append(p.dims, f.listBox, f.followBox)
	f.entries = entry.NewColumn(2.5, f.followBox, f.wrong, f.nameEntry(),
		f.sizeEntry("width_mm", "bag.width_mm", func(s *bag.Size) *float64 { return &s.Width }),
		f.sizeEntry("gusset_mm", "bag.gusset_mm", func(s *bag.Size) *float64 { return &s.Gusset }),
		f.sizeEntry("height_mm", "bag.height_mm", func(s *bag.Size) *float64 { return &s.Height }),
		f.sizeEntry("quantity", "run.quantity", func(s *bag.Size) *float64 { return &s.Quantity }),
		entry.NewColumn(1,
			steppage.NewOffer(lang.L("Work on this size"), f.swap).
				WithHelp(lang.L("Makes this size the bag of all steps, and the bag of now a further size in its place."), p.Explain),
			steppage.NewOffer(lang.L("Remove this size"), f.remove).WithHelp(lang.L("Takes this size out of the family."), p.Explain)))
	f.entries.Hide()
	adds := entry.NewColumn(1)
	for i := range 2 {
		add := steppage.NewOffer(lang.L("Add a size"), func() { f.appendSize(i) }).
			WithHelp(lang.L("Adds a size with the proportions of this bag; change it as you like."), p.Explain)
		f.add = append(f.add, add)
		adds.Add(add)
	}
	f.full = entry.NewText("", entry.Muted)
	f.Add(entry.NewColumn(2,
		entry.NewText(lang.L("Family"), entry.Heading),
		entry.NewText(lang.L("Further sizes of the same design, each with its own blank. All else they have from this bag."), entry.Muted),
		f.listBox, f.entries, adds, f.full,
	))
	f.OnFollow(f.showFamily)
	f.fills = append(f.fills, f.showFamily)
}

// choose opens the entries of a size, or closes them; the bag itself has its own steps.
func (f *family) choose(i int) {
	if i == f.chosen || i < 0 {
		i = -1
	}
	f.Forget()
	f.chosen = i
	f.showFamily(f.Doc.State())
}

// changed returns the spec with the chosen size changed.
func (f *family) changed(change func(*bag.Size)) bag.Spec {
	spec := f.Doc.State().Spec
	if f.chosen >= 0 && f.chosen < len(spec.Family) {
		spec.Family = slices.Clone(spec.Family)
		change(&spec.Family[f.chosen])
	}
	return spec
}

func (f *family) remove() {
	spec := f.Doc.State().Spec
	if f.chosen >= 0 && f.chosen < len(spec.Family) {
		spec.Family = slices.Delete(slices.Clone(spec.Family), f.chosen, f.chosen+1)
		f.chosen = -1
		f.Doc.Set(spec)
	}
}

// swap makes the chosen size the bag of the project, and that a further size in its
// place, as one step to undo.
func (f *family) swap() {
	state := f.Doc.State()
	if f.chosen >= 0 && f.chosen < len(state.Spec.Family) {
		spec := exchanged(&state.Spec, f.chosen)
		f.chosen = -1
		f.Doc.Set(spec)
	}
}

// exchanged returns the spec with the i-th further size as its bag. Each keeps its name.
func exchanged(spec *bag.Spec, i int) bag.Spec {
	size := spec.Family[i]
	to := spec.Member(size)
	const fine = 1e6 // keeps the noise of the division out of the file
	to.Handle.Spacing = math.Round(to.Handle.Spacing*fine) / fine
	to.Breaks, to.Family = spec.Breaks, slices.Clone(spec.Family)
	to.Family[i] = bag.Size{
		Name: spec.Name, Width: spec.Body.Width, Gusset: spec.Body.Gusset, Height: spec.Body.Height, Quantity: spec.Run.Quantity,
	}
	return to
}

func (f *family) nameEntry() entry.Tall {
	name := f.Name(lang.L("Name of the size"), lang.L("Stands on the drawings of this size and names its files."), func(name string) {
		f.Doc.Set(f.changed(func(s *bag.Size) { s.Name = name }))
	})
	f.puts = append(f.puts, func(s *bag.Size) { name.Put(s.Name) })
	f.fields["name"] = name.Complain
	return name
}

// sizeEntry returns the entry of a number, with the limits of a field of the bag.
func (f *family) sizeEntry(key, like string, of func(*bag.Size) *float64) entry.Tall {
	field, _ := bag.FieldAt(like)
	quantity := entry.OfField(f.Doc, field)
	quantity.Set = func(value float64) { f.Doc.Set(f.changed(func(s *bag.Size) { *of(s) = value })) }
	quantity.Drag = func(value float64) { f.Doc.Drag(f.changed(func(s *bag.Size) { *of(s) = value })) }
	number := f.Number(quantity)
	f.puts = append(f.puts, func(s *bag.Size) { number.Put(*of(s)) })
	f.fields[key] = number.Complain
	return number
}

// showFamily shows the list, and the entries of what is chosen in it.
func (f *family) showFamily(state document.State) {
	sizes := state.Spec.Family
	if state.Loads != f.loads || f.chosen >= len(sizes) {
		f.loads, f.chosen = state.Loads, -1
	}
	f.list.Set(f.rows(state))
	f.Reveal(f.listBox, len(sizes) > 0)
	if f.chosen >= 0 {
		for _, put := range f.puts {
			put(&sizes[f.chosen])
		}
		f.showChosen(state)
	}
	f.Reveal(f.entries, f.chosen >= 0)
	f.showAdds(state)
}

// rows are the bag itself and the further sizes.
func (f *family) rows(state document.State) []steppage.Row {
	if len(state.Spec.Family) == 0 {
		return nil
	}
	body := &state.Spec.Body
	own := bag.Size{Width: body.Width, Gusset: body.Gusset, Height: body.Height, Quantity: state.Spec.Run.Quantity}
	rows := []steppage.Row{{Name: steppage.ShortName(nameOr(state.Spec.Name, lang.L("This bag"))), Note: f.sizeNote(own) + ", " + lang.L("the bag of all steps")}}
	complaints := f.Complaints(state.Err)
	for i, size := range state.Spec.Family {
		note := f.sizeNote(size)
		if found := f.findingsNote(i, complaints); found != "" {
			note += ", " + found
		}
		rows = append(rows, steppage.Row{Name: steppage.ShortName(nameOr(size.Name, f.sizeText(size))), Note: note, Chosen: i == f.chosen})
	}
	return rows
}

func nameOr(name, other string) string {
	if name == "" {
		return other
	}
	return name
}

func (f *family) sizeText(s bag.Size) string {
	return f.Bare(s.Width) + " × " + f.Bare(s.Gusset) + " × " + f.Length(s.Height)
}

func (f *family) sizeNote(s bag.Size) string {
	return fmt.Sprintf(lang.L("%s, %s bags"), f.sizeText(s), count(s.Quantity))
}

// memberAt returns what was reckoned for a further size, nil where nothing was.
func (f *family) memberAt(i int) *member {
	if i+1 < len(f.result.members) {
		return &f.result.members[i+1]
	}
	return nil
}

// findingsNote counts what is wrong with a size.
func (f *family) findingsNote(i int, complaints []*bag.FieldError) string {
	wrong := 0
	for _, c := range complaints {
		if strings.HasPrefix(c.Path, fmt.Sprintf("family[%d].", i)) {
			wrong++
		}
	}
	warnings := 0
	if m := f.memberAt(i); m != nil && m.snapshot != nil && wrong == 0 {
		for j := range m.snapshot.Findings {
			switch m.snapshot.Findings[j].Severity {
			case check.Error:
				wrong++
			case check.Warning:
				warnings++
			}
		}
	}
	var parts []string
	if wrong > 0 {
		parts = append(parts, fmt.Sprintf(lang.L("errors: %d"), wrong))
	}
	if warnings > 0 {
		parts = append(parts, fmt.Sprintf(lang.L("warnings: %d"), warnings))
	}
	return strings.Join(parts, ", ")
}

// showChosen says what follows from the chosen size, and what is wrong with it.
func (f *family) showChosen(state document.State) {
	complaints := f.Complaints(state.Err)
	at := fmt.Sprintf("family[%d].", f.chosen)
	for key, complain := range f.fields {
		complain(steppage.ComplaintAbout(at+key, complaints))
	}
	wrong := ""
	for _, c := range complaints {
		if key, of := strings.CutPrefix(c.Path, at); of && f.fields[key] == nil {
			wrong = steppage.Complaint(c)
		}
	}
	follows := ""
	if m := f.memberAt(f.chosen); m != nil && m.snapshot != nil && state.Err == nil {
		follows = f.memberText(m.snapshot)
		for i := range m.snapshot.Findings {
			if found := &m.snapshot.Findings[i]; found.Severity == check.Error && wrong == "" {
				wrong = f.Said(found.Message) + " " + f.Said(found.Remedy)
			}
		}
	}
	f.follows.SetText(follows)
	f.wrong.Say(check.Error, wrong, nil)
}

// memberText says what a size takes.
func (f *family) memberText(s *document.Snapshot) string {
	piece := &s.Plan.Piece
	area := f.Area(piece.Width, piece.Height)
	if s.Plan.Up() == 0 {
		return fmt.Sprintf(lang.L("Blank %s, which does not fit the sheet; a bag weighs %s g."), area, words.Number(s.Job.BagGrams, 1))
	}
	return fmt.Sprintf(lang.L("Blank %s, %d-up, %s sheets; a bag weighs %s g."), area, s.Plan.Up(), count(s.Job.Sheets), words.Number(s.Job.BagGrams, 1))
}
