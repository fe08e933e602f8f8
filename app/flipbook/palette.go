package flipbook

import (
	"cmp"
	"image"
	"image/color"
	"slices"
)

// colours is the most that a GIF may have, less one that is transparent.
const colours = 255

// cellBits is how many bits of each channel count when colours are gathered in cells.
const cellBits = 5

// cell is a colour with the number of pixels that have it.
type cell struct {
	channels [3]uint8
	weight   int
}

// census counts the colours of pictures.
type census map[[3]uint8]*tally

// tally is the sum over all pixels of a cell.
type tally struct{ red, green, blue, count int }

// add counts the pixels of a picture.
func (c census) add(picture *image.RGBA) {
	for y := range picture.Rect.Dy() {
		row := picture.Pix[y*picture.Stride:]
		for x := range picture.Rect.Dx() {
			p := row[4*x : 4*x+3 : 4*x+3]
			const shift = 8 - cellBits
			key := [3]uint8{p[0] >> shift, p[1] >> shift, p[2] >> shift}
			t := c[key]
			if t == nil {
				t = &tally{}
				c[key] = t
			}
			t.red, t.green, t.blue, t.count = t.red+int(p[0]), t.green+int(p[1]), t.blue+int(p[2]), t.count+1
		}
	}
}

// palette returns the colours that stand best for all that were counted, with the
// transparent one in the last place (median cut, P. Heckbert, "Color image quantization
// for frame buffer display", 1982).
func (c census) palette() color.Palette {
	var cells []cell
	for _, t := range c {
		mean := func(sum int) uint8 { return uint8((sum + t.count/2) / t.count) }
		cells = append(cells, cell{[3]uint8{mean(t.red), mean(t.green), mean(t.blue)}, t.count})
	}
	slices.SortFunc(cells, func(a, b cell) int { return slices.Compare(a.channels[:], b.channels[:]) })
	boxes := [][]cell{cells}
	for len(boxes) < colours {
		at := widest(boxes)
		if at < 0 {
			break
		}
		low, high := halved(boxes[at])
		boxes[at] = low
		boxes = append(boxes, high)
	}
	var list color.Palette
	for _, box := range boxes {
		list = append(list, meanOf(box))
	}
	return append(list, color.RGBA{})
}

// widest returns the box that is worth halving most, −1 where none can be.
func widest(boxes [][]cell) int {
	at, most := -1, 0.0
	for i, box := range boxes {
		if len(box) < 2 {
			continue
		}
		_, spread := longestSide(box)
		weight := 0
		for _, c := range box {
			weight += c.weight
		}
		// Few pixels must not go without a colour of their own, such as lit creases.
		if worth := float64(spread) * rootOf(weight); worth > most {
			at, most = i, worth
		}
	}
	return at
}

// rootOf returns about the fourth root of a number, by which large plain areas count
// little more than small ones.
func rootOf(weight int) float64 {
	root := 1.0
	for weight > 1 {
		weight >>= 4
		root *= 2
	}
	return root
}

// longestSide returns the channel in which the cells differ most, and by how much.
func longestSide(box []cell) (channel, spread int) {
	for k := range 3 {
		low, high := 255, 0
		for _, c := range box {
			low, high = min(low, int(c.channels[k])), max(high, int(c.channels[k]))
		}
		if high-low > spread {
			channel, spread = k, high-low
		}
	}
	return channel, spread
}

// halved parts a box where half of its pixels lie to both sides.
func halved(box []cell) (low, high []cell) {
	channel, _ := longestSide(box)
	slices.SortStableFunc(box, func(a, b cell) int { return cmp.Compare(a.channels[channel], b.channels[channel]) })
	total := 0
	for _, c := range box {
		total += c.weight
	}
	sum := 0
	for i, c := range box[:len(box)-1] {
		if sum += c.weight; 2*sum >= total {
			return box[:i+1], box[i+1:]
		}
	}
	return box[:len(box)-1], box[len(box)-1:]
}

func meanOf(box []cell) color.RGBA {
	var sums [3]int
	total := 0
	for _, c := range box {
		total += c.weight
		for k := range 3 {
			sums[k] += int(c.channels[k]) * c.weight
		}
	}
	mean := func(k int) uint8 { return uint8((sums[k] + total/2) / total) }
	return color.RGBA{mean(0), mean(1), mean(2), 255}
}

// matcher finds the nearest colour of a palette. It remembers what it has found.
type matcher struct {
	palette color.Palette
	found   map[uint32]uint8
}

func newMatcher(palette color.Palette) *matcher {
	return &matcher{palette, map[uint32]uint8{}}
}

// index returns the place of the nearest colour that is not transparent.
func (m *matcher) index(red, green, blue uint8) uint8 {
	key := uint32(red)<<16 | uint32(green)<<8 | uint32(blue)
	if at, known := m.found[key]; known {
		return at
	}
	best, least := 0, 1<<30
	for i, c := range m.palette[:len(m.palette)-1] {
		p := c.(color.RGBA)
		r, g, b := int(p.R)-int(red), int(p.G)-int(green), int(p.B)-int(blue)
		// The eye tells greens apart best and blues least (common practice, no
		// published source for the weights).
		if distance := 3*r*r + 4*g*g + 2*b*b; distance < least {
			best, least = i, distance
		}
	}
	m.found[key] = uint8(best)
	return uint8(best)
}

// all returns the places of all pixels of a picture, row by row.
func (m *matcher) all(picture *image.RGBA) []uint8 {
	places := make([]uint8, 0, picture.Rect.Dx()*picture.Rect.Dy())
	var last [3]uint8
	at := m.index(0, 0, 0)
	for y := range picture.Rect.Dy() {
		row := picture.Pix[y*picture.Stride:][:4*picture.Rect.Dx()]
		for ; len(row) > 0; row = row[4:] {
			if p := [3]uint8(row); p != last { // most are like their neighbours
				last, at = p, m.index(p[0], p[1], p[2])
			}
			places = append(places, at)
		}
	}
	return places
}
