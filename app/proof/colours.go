package proof

import (
	"cmp"
	"image/color"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/ink"
	"gussetwright/render/solid"
)

// swatch is a colour of the print. The value is how the artwork states it, for those
// who print it; "" where nothing is printed.
type swatch struct {
	name, value string
	shown       color.RGBA // on the paper of the bag
}

// swatches returns the colours of the bag: the paper where it is not white, the
// background, and the main colours of the artwork. No two have the same name.
func (p *Proof) swatches() ([]swatch, error) {
	spec := &p.Snapshot.Spec
	paper := solid.PaperOf(spec.Paper).Print
	var list []swatch
	if p.onBrown() {
		list = append(list, swatch{p.say("Paper, natural brown"), "", paper})
	}
	background := inks{}
	if b := spec.Print.Background; b.Total() > 0 {
		background = inks{b.Cyan / 100, b.Magenta / 100, b.Yellow / 100, b.Black / 100}
		name := p.tell(phrase.New("%s, background", colourName(background.screen())))
		list = append(list, swatch{name, background.String(), onPaper(background.screen(), paper)})
	}
	found, err := p.artColours()
	if err != nil {
		return nil, err
	}
	found = slices.DeleteFunc(found, func(c mainColour) bool {
		// The same to the eye as the background, and shown already.
		return background != (inks{}) && oklabOf(c.colour).distance(oklabOf(background.screen())) < reach/3
	})
	for i, name := range p.namesOf(found) {
		c := found[i]
		value := p.tell(phrase.New("sRGB %d %d %d", c.colour.R, c.colour.G, c.colour.B))
		if c.inks != nil {
			value = c.inks.String()
		}
		list = append(list, swatch{name, value, onPaper(c.colour, paper)})
	}
	return list, nil
}

// inks are shares from 0 to 1 of cyan, magenta, yellow and black.
type inks [4]float64

// String returns the inks in percent, by the letters that the whole trade uses.
func (i inks) String() string {
	text := ""
	for k, letter := range []string{"C ", " M ", " Y ", " K "} {
		text += letter + geometry.FormatNumber(100*i[k], 0)
	}
	return text
}

func (i inks) screen() color.RGBA { return ink.RGB(i[0], i[1], i[2], i[3]) }

// onPaper returns what an ink looks like on a paper: both take light away.
func onPaper(c, paper color.RGBA) color.RGBA {
	times := func(a, b uint8) uint8 { return uint8((int(a)*int(b) + 127) / 255) }
	return color.RGBA{times(c.R, paper.R), times(c.G, paper.G), times(c.B, paper.B), 255}
}

// mainColour is a colour that much of the artwork has.
type mainColour struct {
	colour color.RGBA
	inks   *inks // where the artwork states them
	weight float64
}

// Which colours are shown: so many, with at least such a share of all that is not
// white. Shades closer than the reach are one colour; it is a distance in Oklab, where
// black and white are 1 apart.
const (
	mostColours = 8
	leastShare  = 0.002
	reach       = 0.075
)

// palette counts the pixels of artwork by their colours.
type palette map[color.RGBA]*mainColour

func (p palette) add(c color.RGBA, weight float64) {
	if entry, known := p[c]; known {
		entry.weight += weight
	} else {
		p[c] = &mainColour{colour: c, weight: weight}
	}
}

// group is a main colour with those close to it.
type group struct {
	all    []*mainColour
	at     oklab
	weight float64
}

// main returns the main colours, the most frequent first.
func (p palette) main() []mainColour {
	// Equal weights are told apart by the colour, so that the order is always the same.
	cells := p.cells()
	var groups []*group
	total := 0.0
	for _, cell := range cells {
		total += cell.weight
		near := slices.IndexFunc(groups, func(g *group) bool { return g.at.distance(cell.at) < reach })
		if near < 0 {
			groups = append(groups, cell)
			continue
		}
		groups[near].all = append(groups[near].all, cell.all...)
		groups[near].weight += cell.weight
	}
	slices.SortStableFunc(groups, func(a, b *group) int { return cmp.Compare(b.weight, a.weight) })
	var found []mainColour
	for _, g := range groups {
		if g.weight >= leastShare*total && len(found) < mostColours {
			found = append(found, g.typical())
		}
	}
	return found
}

// cells returns the colours in small boxes of like ones, the fullest first.
func (p palette) cells() []*group {
	const coarse = 4 // bits of each channel that are left out
	boxes := map[color.RGBA]*group{}
	for _, entry := range p.sorted() {
		c := entry.colour
		key := color.RGBA{c.R >> coarse, c.G >> coarse, c.B >> coarse, 0}
		if boxes[key] == nil {
			boxes[key] = &group{}
		}
		boxes[key].all = append(boxes[key].all, entry)
		boxes[key].weight += entry.weight
	}
	cells := make([]*group, 0, len(boxes))
	for _, box := range boxes {
		box.at = oklabOf(box.typical().colour)
		cells = append(cells, box)
	}
	slices.SortFunc(cells, func(a, b *group) int {
		return cmp.Or(cmp.Compare(b.weight, a.weight), compareColours(a.all[0].colour, b.all[0].colour))
	})
	return cells
}

func (p palette) sorted() []*mainColour {
	list := make([]*mainColour, 0, len(p))
	for _, entry := range p {
		list = append(list, entry)
	}
	slices.SortFunc(list, func(a, b *mainColour) int { return compareColours(a.colour, b.colour) })
	return list
}

func compareColours(a, b color.RGBA) int {
	return cmp.Or(cmp.Compare(a.R, b.R), cmp.Compare(a.G, b.G), cmp.Compare(a.B, b.B))
}

// flatShare is the share of a group that one exact colour must have to stand for it:
// drawn artwork has such colours, photographs have none.
const flatShare = 0.25

// typical returns the colour that stands for a group: an exact one where it is drawn
// with that, otherwise the mean.
func (g *group) typical() mainColour {
	most := g.all[0]
	for _, entry := range g.all {
		if entry.weight > most.weight {
			most = entry
		}
	}
	if most.weight >= flatShare*g.weight {
		return *most
	}
	var sum [3]float64
	var mixed inks
	weight, inked := 0.0, 0.0
	for _, entry := range g.all {
		weight += entry.weight
		for i, v := range []uint8{entry.colour.R, entry.colour.G, entry.colour.B} {
			sum[i] += float64(v) * entry.weight
		}
		if entry.inks != nil {
			inked += entry.weight
			for i := range mixed {
				mixed[i] += entry.inks[i] * entry.weight
			}
		}
	}
	mean := func(v float64) uint8 { return uint8(v/weight + 0.5) }
	typical := mainColour{colour: color.RGBA{mean(sum[0]), mean(sum[1]), mean(sum[2]), 255}, weight: weight}
	if inked > weight/2 {
		for i := range mixed {
			mixed[i] /= inked
		}
		typical.inks = &mixed
	}
	return typical
}
