package practice

import (
	"slices"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

// Paper is the paper that practice blanks are printed on, by the name that it has in
// trade; "" is the usual one.
type Paper string

// The papers that printers in offices and copy shops take.
const (
	A4      Paper = "A4"
	A3      Paper = "A3"
	Letter  Paper = "Letter"
	Tabloid Paper = "Tabloid"
)

// Papers lists all papers, those of one series after each other.
func Papers() []Paper { return []Paper{A4, A3, Letter, Tabloid} }

// UsualPaper returns the paper that people have who measure in a unit.
func UsualPaper(unit geometry.Unit) Paper {
	if unit == geometry.Inch {
		return Letter
	}
	return A4
}

// PaperNamed returns the paper of a name, in capitals or not; "" is the usual one. The
// error says which there are.
func PaperNamed(name string) (Paper, error) {
	var names []string
	for _, paper := range append(Papers(), "") {
		if strings.EqualFold(name, string(paper)) {
			return paper, nil
		}
		names = append(names, string(paper))
	}
	return "", phrase.Errorf("paper %q is not known; choose from %s", name, strings.Join(names[:len(Papers())], ", "))
}

// Size returns the size upright. A3 is two sheets of A4 beside each other (ISO 216),
// Tabloid 11 by 17 inches.
func (p Paper) Size() report.Paper {
	switch p {
	case A3:
		return report.Paper{Width: 297, Height: 420}
	case Tabloid:
		return report.Paper{Width: 279.4, Height: 431.8}
	case Letter:
		return report.Letter()
	}
	return report.A4()
}

// check returns an error for a paper that there is not.
func (p Paper) check() error {
	if slices.Contains(Papers(), p) {
		return nil
	}
	_, err := PaperNamed(string(p))
	return err
}

// growth returns how much larger words and maps are than on the smaller paper of the
// series, of which they then take the same part.
func (p Paper) growth() float64 {
	switch p {
	case A3:
		return A3.Size().Width / A4.Size().Width
	case Tabloid:
		return Tabloid.Size().Width / Letter.Size().Width
	}
	return 1
}
