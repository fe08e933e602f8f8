// Package check looks at a laid-out bag and says what cannot be made, what is
// likely to go wrong and what to keep in mind: a finding each, with a remedy and a
// place on the blank.
//
// The limits are common practice of bag makers without a published source, unless
// a comment beside them says otherwise.
package check

import (
	"cmp"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// Severity says how bad a finding is.
type Severity string

// The severities: an error cannot be made, a warning is likely to go wrong, a note
// is to be kept in mind.
const (
	Error   Severity = "error"
	Warning Severity = "warning"
	Note    Severity = "note"
)

// Finding is one thing to know about a bag.
type Finding struct {
	Severity Severity
	Code     string        // stable, for programs, such as "seam-flap-narrow"
	Message  phrase.Phrase // what is so, with the numbers
	Remedy   phrase.Phrase // what to do about it
	Piece    int           // index into the pieces of the blank
	At       geometry.Vec2
}

// inspection is one look at a bag.
type inspection struct {
	spec     bag.Spec
	blank    *blank.Blank
	plan     *sheet.Plan
	levels   blank.Levels
	findings []Finding
}

// Inspect returns the findings about a bag, errors first. The plan is that of the
// blank's pieces on the sheet of its Spec.
func Inspect(laid *blank.Blank, plan *sheet.Plan) []Finding {
	look := inspection{
		spec: laid.Spec, blank: laid, plan: plan, levels: laid.Pieces[0].Levels,
		findings: make([]Finding, 0, 8),
	}
	look.base()
	look.packing()
	look.topEdge()
	look.seam()
	look.handle()
	look.cards()
	look.paper()
	look.sheet()
	Sort(look.findings)
	return look.findings
}

// Sort puts errors first and notes last, and leaves findings of one severity in their
// order.
func Sort(findings []Finding) {
	rank := map[Severity]int{Error: 0, Warning: 1, Note: 2}
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Compare(rank[a.Severity], rank[b.Severity])
	})
}

// HasError tells whether something cannot be made.
func HasError(findings []Finding) bool {
	return slices.ContainsFunc(findings, func(f Finding) bool { return f.Severity == Error })
}

// find adds a finding about a place on the first piece, moved onto the paper where
// what it speaks of lies beside it.
func (l *inspection) find(severity Severity, code string, at geometry.Vec2, message, remedy phrase.Phrase) {
	piece := &l.blank.Pieces[0]
	at = geometry.Vec2{X: min(max(at.X, 0), piece.Width), Y: min(max(at.Y, 0), piece.Height)}
	l.findings = append(l.findings, Finding{Severity: severity, Code: code, Message: message, Remedy: remedy, At: at})
}

// mm makes millimetres a value of a sentence.
func mm(length float64) geometry.Length { return geometry.Length(length) }

// place returns the middle of a panel of the first piece.
func (l *inspection) place(panel string) geometry.Vec2 {
	found, _ := l.blank.Pieces[0].Panel(panel)
	return found.Box.Center()
}

// firstFace returns the left face of the first piece, on which findings about
// both faces are shown.
func (l *inspection) firstFace() geometry.Rect {
	face, _ := l.blank.Pieces[0].Panel("front")
	return face.Box
}

func sentence(format string, args ...any) phrase.Phrase { return phrase.New(format, args...) }
