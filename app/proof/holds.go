package proof

import "gussetwright/geometry/phrase"

// thing is a plain object that everybody has held, as it stands upright in a bag.
// Lengths are mm.
type thing struct {
	name                 phrase.Word
	width, depth, height float64
}

// things are measured with a ruler and rounded up, no published source, but for the
// paper sizes (ISO 216) and what is bound or printed in them.
func things() []thing {
	return []thing{
		{"a football", 225, 225, 225},
		{"a shoe box on its side", 340, 130, 210},
		{"a full ring binder", 290, 80, 320},
		{"two bottles of 0.75 l side by side", 165, 82, 325},
		{"a bottle of 0.75 l", 82, 82, 325},
		{"a mug in its box", 115, 105, 110},
		{"an A4 magazine, upright", 210, 6, 297},
		{"an A5 book, upright", 148, 25, 210},
		{"a jar of jam", 75, 75, 110},
		{"a paperback, upright", 115, 25, 185},
		{"a pack of playing cards", 65, 18, 92},
		{"an A5 card, upright", 148, 1, 210},
		{"a postcard, upright", 105, 1, 148},
	}
}

// What a thing needs around it to slide in, and how much larger than it a bag may be so
// that naming it still tells the size.
const (
	thingEase  = 8.0 // mm, of width and height
	bookEase   = 3.0 // mm, of thickness
	mostThings = 14  // times the volume
)

// held returns the largest of the things that the bag takes whole, and false where
// none fits or all are far too small to tell anything.
func held(width, gusset, height float64) (phrase.Word, bool) {
	var best thing
	volume := func(t thing) float64 { return t.width * t.depth * t.height }
	for _, t := range things() {
		thick := t.depth + bookEase
		if t.depth <= 1 {
			thick = 0 // a card slides into a flat bag
		}
		if t.width+thingEase <= width && thick <= gusset && t.height+thingEase <= height && volume(t) > volume(best) {
			best = t
		}
	}
	return best.name, best.name != "" && volume(best)*mostThings >= width*gusset*height
}
