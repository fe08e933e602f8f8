package project

import (
	"fmt"
	"slices"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// MostKept is how many sizes a project keeps: as many as stand side by side on a screen.
const MostKept = 4

// MostLetters is how many letters there are for kept sizes: A to Z, then AA to ZZ.
const MostLetters = alphabet + alphabet*alphabet

const alphabet = 26

// KeptSize is a size that was kept in a meeting, to be compared with others. All else
// there is to the bag is that of the project, so the bag need not go together in it. It
// is no part of the bag, whose drawings and history know nothing of it.
type KeptSize struct {
	Letter string  `json:"letter"` // as of Letter; no two sizes share one
	Width  float64 `json:"width_mm"`
	Gusset float64 `json:"gusset_mm"`
	Height float64 `json:"height_mm"`
}

// Letter returns the letter of a number from 0 to MostLetters-1: A for 0, and AA after Z.
func Letter(number int) string {
	if number >= alphabet {
		return Letter(number/alphabet-1) + Letter(number%alphabet)
	}
	return string(rune('A' + number))
}

// Number returns the number of the letter of a size, or -1 where it has none.
func (k KeptSize) Number() int {
	number := -1
	for _, letter := range []byte(k.Letter) {
		if letter < 'A' || letter > 'Z' || number >= alphabet {
			return -1
		}
		number = (number+1)*alphabet + int(letter-'A')
	}
	return number
}

func keptKeys() []string { return []string{"letter", "width_mm", "gusset_mm", "height_mm"} }

// keptSizes takes the sizes over that were kept. A measure that is not given is that of
// the bag.
func (d *document) keptSizes(tree map[string]any) {
	example := `{"letter": "A", "width_mm": 180, "gusset_mm": 80, "height_mm": 240}`
	d.list(tree, "kept_sizes", example, func(path string, entries map[string]any) {
		body := d.spec.Body
		size := KeptSize{Width: body.Width, Gusset: body.Gusset, Height: body.Height}
		d.text(entries, path, "letter", &size.Letter)
		d.number(entries, path, "width_mm", &size.Width)
		d.number(entries, path, "gusset_mm", &size.Gusset)
		d.number(entries, path, "height_mm", &size.Height)
		d.unknownIn(path, entries, func(key string) bool { return slices.Contains(keptKeys(), key) })
		d.kept = append(d.kept, size)
	})
}

// checkKept returns the complaints about kept sizes that a project file cannot hold.
func checkKept(sizes []KeptSize) []error {
	var complaints []error
	complain := func(path, value string, limit, remedy phrase.Phrase) {
		complaints = append(complaints, &bag.FieldError{Path: path, Value: value, Limit: limit, Remedy: remedy})
	}
	if len(sizes) > MostKept {
		complain("kept_sizes", fmt.Sprintf("a list of %d", len(sizes)), phrase.New("more than %d", MostKept), phrase.New("take some out of the list"))
	}
	seen := map[string]string{}
	for i, size := range sizes {
		at := fmt.Sprintf("kept_sizes[%d].", i)
		other, twice := seen[size.Letter]
		switch {
		case size.Number() < 0:
			complain(at+"letter", shown(size.Letter), phrase.New("neither one nor two capital letters from A to Z"), phrase.New(`enter a letter such as "A"`))
		case twice:
			complain(at+"letter", shown(size.Letter), phrase.New("the same as %s", other), phrase.New("give every size a letter of its own"))
		}
		seen[size.Letter] = at + "letter"
		complaints = append(complaints, checkMeasure("bag.width_mm", at+"width_mm", size.Width)...)
		complaints = append(complaints, checkMeasure("bag.gusset_mm", at+"gusset_mm", size.Gusset)...)
		complaints = append(complaints, checkMeasure("bag.height_mm", at+"height_mm", size.Height)...)
	}
	return complaints
}

// checkMeasure returns the complaint about a measure that has the limits of a field.
func checkMeasure(fieldPath, path string, mm float64) []error {
	field, _ := bag.FieldAt(fieldPath)
	complaint := field.CheckNumber(mm)
	if complaint == nil {
		return nil
	}
	complaint.Path = path
	return []error{complaint}
}
