package meeting

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// axis is one of the three measures of a bag.
type axis int

const (
	width axis = iota
	depth
	height
	axes // how many there are
)

// path is where the measure stands in bag.json.
func (a axis) path() string {
	return [axes]string{"bag.width_mm", "bag.gusset_mm", "bag.height_mm"}[a]
}

// name is what a client calls the measure.
func (a axis) name() string {
	return [axes]string{lang.L("Width"), lang.L("Depth"), lang.L("Height")}[a]
}

// size is the size of a standing bag by its axes, in mm.
type size [axes]float64

func sizeOf(spec *bag.Spec) size { return size{spec.Body.Width, spec.Body.Gusset, spec.Body.Height} }

// of returns a bag in this size. Holes that stood where they usually do go on doing so.
func (s size) of(spec bag.Spec) bag.Spec {
	usual := math.Abs(spec.Handle.Spacing-spec.Body.Width/2) < geometry.Tolerance
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = s[width], s[depth], s[height]
	if usual {
		spec.Derive(func(path string) bool { return path != "handle.spacing_mm" })
	}
	return spec
}

// is tells whether two sizes are the same as far as paper can tell.
func (s size) is(other size) bool {
	for a := range axes {
		if math.Abs(s[a]-other[a]) > geometry.Tolerance {
			return false
		}
	}
	return true
}

// words returns the size in words.
func (s size) words(unit geometry.Unit) string {
	w, d, h := withUnit(s[width], unit), withUnit(s[depth], unit), withUnit(s[height], unit)
	if s[depth] == 0 {
		return fmt.Sprintf(lang.L("%s wide, %s high, flat"), w, h)
	}
	return fmt.Sprintf(lang.L("%s wide, %s deep, %s high"), w, d, h)
}

// lines returns the size in words, a line for each measure.
func (s size) lines(unit geometry.Unit) [axes]string {
	deep := lang.L("flat")
	if s[depth] > 0 {
		deep = fmt.Sprintf(lang.L("%s deep"), withUnit(s[depth], unit))
	}
	wide, high := withUnit(s[width], unit), withUnit(s[height], unit)
	return [axes]string{fmt.Sprintf(lang.L("%s wide"), wide), deep, fmt.Sprintf(lang.L("%s high"), high)}
}

// brief returns the size where there is little room.
func (s size) brief(unit geometry.Unit) string {
	return number(s[width], unit) + " × " + number(s[depth], unit) + " × " + withUnit(s[height], unit)
}

// number writes a length without its unit.
func number(mm float64, unit geometry.Unit) string {
	return words.Number(mm/unit.Length(), unit.Decimals())
}

func withUnit(mm float64, unit geometry.Unit) string {
	return geometry.WithUnit(number(mm, unit), string(unit))
}
