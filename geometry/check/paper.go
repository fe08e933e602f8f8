package check

import (
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// creaseFrom is the grammage from which paper should be creased before it is
// folded: 150 g/m², the guidance of a paper mill for coated papers.
const creaseFrom = 150

// Faces up to smallFace mm wide make small bags, from largeFace on large ones.
const (
	smallFace = 180
	largeFace = 350
)

// usualGrammage returns the usual range in g/m² for a bag of this size, and the
// words for its kind (common practice, no published source).
func usualGrammage(spec bag.Spec) (least, most float64, kind phrase.Word) {
	switch {
	case spec.Paper.Kind == bag.PaperKraft:
		return 80, 130, "kraft bag"
	case spec.Body.Width <= smallFace:
		return 120, 170, "small bag"
	case spec.Body.Width < largeFace:
		return 150, 210, "medium bag"
	}
	return 190, 250, "large bag"
}

// paper looks at grammage and grain.
func (l *inspection) paper() {
	p := l.spec.Paper
	at := l.place("back")
	if l.blank.Seams == 2 {
		at = l.place("front")
	}
	least, most, kind := usualGrammage(l.spec)
	switch {
	case p.Grammage < least:
		l.find(Warning, "grammage-light", at,
			sentence("%g g/m² is light for a %s; %g to %g g/m² is usual", p.Grammage, kind, least, most),
			sentence("take a heavier paper, or confirm the load with a sample test"))
	case p.Grammage > most:
		l.find(Note, "grammage-heavy", at,
			sentence("%g g/m² is heavy for a %s; %g to %g g/m² is usual", p.Grammage, kind, least, most),
			sentence("expect stiff creases and springing flaps, or take a lighter paper"))
	}
	if p.Grammage >= creaseFrom {
		l.find(Note, "crease-before-folding", at,
			sentence("paper of %g g/m² cracks when it is folded uncreased", p.Grammage),
			sentence("crease every fold first; this holds from %d g/m²", creaseFrom))
	}
	l.lamination()
	if p.Grain == bag.GrainWidth {
		l.find(Warning, "grain-across", at,
			sentence("the grain runs across the height, so the long panel edges fold against it and crack or wave"),
			sentence("lay the blank so that the grain runs along the height"))
	}
}

// lamination says what a film takes and what it makes of the bag. C/PAP is the mark
// of composites of paper in Commission Decision 97/129/EC, which leaves marking to
// the free will of the maker.
func (l *inspection) lamination() {
	if l.spec.Paper.Lamination == bag.LaminationNone {
		return
	}
	glue := l.place("seam-flap")
	l.find(Note, "lamination-glue", glue,
		sentence("glue does not hold on film, so the lamination must leave the glue areas of the print side free"),
		sentence("send the film maker the drawing with the glue areas, or ask the bag maker for a glue that holds on this film"))
	l.find(Note, "lamination-recycling", l.place("front"),
		sentence("film makes the paper a composite, which not every paper mill takes back"),
		sentence("ask who is to recycle the bags; a voluntary material mark by 97/129/EC is then C/PAP, not PAP"))
}
