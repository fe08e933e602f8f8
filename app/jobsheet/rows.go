package jobsheet

import (
	"fmt"
	"strings"
	"time"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/load"
	"gussetwright/geometry/phrase"
)

// ledger gathers the rows of the table.
type ledger struct {
	*maker
	section string
	rows    []row
}

// rows returns the table: entries and what follows from them, in the order of the work.
func (m *maker) rows() []row {
	l := &ledger{maker: m}
	l.project()
	l.bag()
	l.blank()
	l.sheet()
	l.run()
	l.die()
	l.gluing()
	l.cards()
	l.handle()
	l.packing()
	l.loading()
	l.quoted()
	l.family()
	l.findings()
	l.begin("Take care")
	for i, caution := range cautions() {
		l.text(fmt.Sprint(i+1), m.say(caution), "")
	}
	return l.rows
}

func (l *ledger) begin(section phrase.Word) { l.section = l.say(section) }

func (l *ledger) put(item phrase.Word, value float64, unit string) {
	l.number(l.say(item), value, unit)
}

func (l *ledger) number(item string, value float64, unit string) {
	l.rows = append(l.rows, row{section: l.section, item: item, value: l.plain(value), unit: unit})
}

func (l *ledger) text(item, value, note string) {
	l.rows = append(l.rows, row{section: l.section, item: item, value: value, note: note})
}

// remark adds a note to the last row.
func (l *ledger) remark(note string) { l.rows[len(l.rows)-1].note = note }

// entries adds the entries of one part of the bag that have a bearing on it.
func (l *ledger) entries(part string) {
	spec := &l.Snapshot.Spec
	for i := range bag.Fields() {
		field := &bag.Fields()[i]
		if !strings.HasPrefix(field.Path, part) || !bag.Applies(field.Path, spec) {
			continue
		}
		name := field.NameIn(l.Say)
		switch field.Kind() {
		case bag.Number:
			l.number(name, field.Number(spec), l.unitOf(field))
			if field.Number(spec) == 0 && (field.Path == "paper.caliper_um" || field.Path == "paper.strength_kn_m") {
				l.remark(l.say("not measured; reckoned from kind and grammage"))
			}
		default:
			value := l.Say(field.Text(spec))
			switch {
			case field.Path == "handle.kind":
				value = l.carriedBy()
			case field.Path == "sheet.grain_rule" && spec.Sheet.GrainRule == bag.GrainFree:
				value = l.say("does not matter") // loose goods are called free too
			}
			l.text(name, value, "")
		}
	}
}

// unitOf returns the unit of a number; what counts things names them.
func (l *ledger) unitOf(field *bag.Field) string {
	switch field.Path {
	case "run.quantity", "packing.bags_per_carton":
		return l.say("bags")
	case "run.make_ready_sheets":
		return l.say("sheets")
	}
	return field.Unit
}

func (l *ledger) project() {
	l.begin("Project")
	l.text(l.say("Name"), l.title(), "")
	l.text(l.say("Date"), l.Date.Format(time.DateOnly), "")
	if l.Version != "" {
		l.text(l.say("Version"), l.Version, "")
	}
}

func (l *ledger) bag() {
	body := l.Snapshot.Spec.Body
	l.begin("Bag")
	l.entries("bag.")
	l.put("Turn-in as built", body.TurnInDepth(), "mm")
	l.put("Base flap", body.BaseFlap(), "mm")
	l.put("Volume", body.Volume(), "l")
	l.begin("Paper")
	l.entries("paper.")
	l.put("Caliper reckoned with", l.Snapshot.Job.CaliperMicrons, "µm")
	l.begin("Print")
	l.entries("print.")
}

func (l *ledger) blank() {
	l.begin("Blank")
	run, laid := &l.Snapshot.Job, &l.Snapshot.Blank
	l.put("Seams", float64(laid.Seams), "")
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		of := func(what phrase.Word) string {
			if len(laid.Pieces) == 1 {
				return l.say(what)
			}
			return l.Say(piece.Name) + ", " + l.say(what)
		}
		l.number(of("Width"), piece.Width, "mm")
		l.number(of("Height"), piece.Height, "mm")
		l.number(of("Pieces in a bag"), float64(piece.Count), "")
		l.number(of("Area within the outline"), piece.Outline.Area(), "mm²")
		l.number(of("Round holes"), float64(len(piece.Holes)), "")
	}
	l.put("Paper area of a bag", run.PaperArea, "mm²")
	l.put("Paper of a bag", run.PaperGrams, "g")
	l.put("Film of a bag", run.FilmGrams, "g")
	l.put("Cards of a bag", run.CardGrams, "g")
	l.put("Weight of a bag", run.BagGrams, "g")
	l.remark(l.weighed())
}

func (l *ledger) sheet() {
	plan, run := &l.Snapshot.Plan, &l.Snapshot.Job
	l.begin("Sheet")
	l.entries("sheet.")
	if name := l.stockName(); name != "" {
		l.text(l.say("Own sheet"), name, "")
	}
	l.put("Usable width", max(plan.Usable.Width(), 0), "mm")
	l.put("Usable height", max(plan.Usable.Height(), 0), "mm")
	l.put("Up", float64(plan.Up()), "")
	l.put("No layout holds more than", float64(plan.Bound), "")
	l.text(l.say("Proven to be the most"), l.Say(yesOrNo(plan.Proven)), "")
	l.put("Bags from a sheet", plan.BagsPerSheet(), "")
	l.put("Waste", plan.WastePercent(), "%")
	l.text(l.say("Grain to order along"), l.Say(string(l.fibres())), l.say("side of the sheet as it is entered"))
	l.put("Too long along the width", plan.TooLong.X, "mm")
	l.put("Too long along the height", plan.TooLong.Y, "mm")
	l.put("Weight of a sheet", run.SheetGrams, "g")
}

func yesOrNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}

func (l *ledger) run() {
	run := &l.Snapshot.Job
	l.begin("Run")
	l.entries("run.")
	l.put("Bags printed", run.BagsPrinted, l.say("bags"))
	l.put("Forms", float64(run.Forms), "")
	l.put("Sheets for make-ready", run.MakeReadySheets, l.say("sheets"))
	l.put("Sheets", run.Sheets, l.say("sheets"))
	l.remark(l.say("with spoilage and make-ready"))
	l.put("Paper", run.PaperKilograms, "kg")
}

func (l *ledger) die() {
	run := &l.Snapshot.Job
	l.begin("Cutting and creasing")
	l.put("Cutting rule for a bag", run.CutMetres, "m")
	l.put("Creasing rule for a bag", run.CreaseMetres, "m")
	l.put("Cutting rule in the dies", run.DieCutMetres, "m")
	l.put("Creasing rule in the dies", run.DieCreaseMetres, "m")
}

func (l *ledger) gluing() {
	run := &l.Snapshot.Job
	l.begin("Gluing")
	l.put("Area of a bag", run.GlueArea, "mm²")
	l.put("Length of a bag", run.GlueMetres, "m")
	l.put("Glue for a bag", run.GlueGrams, "g")
	l.put("Glue for the run", run.GlueKilograms, "kg")
	for _, g := range glueAreas(&l.Snapshot.Blank) {
		name := l.glueTitle(g)
		l.number(name+", "+l.say("areas"), float64(g.count), "")
		l.number(name+", "+l.say("area"), g.area, "mm²")
	}
}

func (l *ledger) loading() {
	if !l.carried {
		return
	}
	l.begin("Load")
	l.put("Estimate", l.load.Kilograms, "kg")
	l.remark(l.tell(load.Caution()))
	l.text(l.say("What gives way first"), l.say(l.load.Weakest.Name), "")
	l.put("Layers there", float64(l.load.Weakest.Layers), "")
	l.put("Breaks at", l.load.Weakest.Force, "N")
	l.put("Strength of the paper", l.load.Strength, "kN/m")
	l.remark(l.tell(l.load.Basis()))
	l.put("Safety factor", load.Safety, "")
}
