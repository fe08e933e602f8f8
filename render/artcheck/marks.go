package artcheck

import (
	"context"
	"image"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
)

// Marks are told from what lies behind them by colour. Where no colour covers a good
// part of a panel, it holds a photograph or a pattern, in which nobody can tell marks
// from ground; such panels are left to the eye.
const (
	groundShare = 0.4 // of the panel, that the colour behind the marks covers at least
	contrast    = 48  // of 255 in some channel, between a mark and its ground
	leastMark   = 4   // pixels; less is noise
)

// mark is a patch of another colour than its ground.
type mark struct {
	box    image.Rectangle
	pixels int
}

// marks looks for text and logos that come too near to what is cut, creased or
// punched.
func (l *inspection) marks(ctx context.Context, g *ground) {
	for _, zone := range g.piece.ArtZones(*l.spec) {
		panel, _ := g.piece.Panel(zone.Panel)
		if ctx.Err() != nil || len(zone.Safe.Vertices) == 0 || panel.Row != blank.RowBody || l.patterned(g.index, zone.Panel) {
			continue
		}
		found, any := g.marksOn(panel)
		if !any {
			continue
		}
		l.nearEdge(g, panel, found)
		l.onHole(g, panel, found)
		l.acrossFlatFold(g, panel, found)
	}
}

// patterned tells whether a repeated file lies on a panel: a pattern runs over edges
// as it comes.
func (l *inspection) patterned(piece int, panel string) bool {
	return slices.ContainsFunc(l.placed, func(p placement.Placed) bool {
		return p.Piece == piece && p.Place == panel && p.Copies != nil
	})
}

// nearEdge finds the mark that comes nearest to the edge of its panel.
func (l *inspection) nearEdge(g *ground, panel blank.Panel, marks []mark) {
	worst, least := mark{}, l.spec.Print.Safe-0.5/scale
	for _, m := range marks {
		if d := g.room(panel, m); d < least {
			worst, least = m, d
		}
	}
	if worst.pixels == 0 {
		return
	}
	l.comesNear(g.index, g.middle(worst), panel.ID, least)
}

// comesNear adds the finding about a mark close to the edge of its panel.
func (l *inspection) comesNear(piece int, at geometry.Vec2, panel string, distance float64) {
	l.find(check.Warning, "mark-near-edge", piece, at,
		phrase.New("a mark on the %s comes within %s of its edge; %s are to be kept", placeWord(panel), mm(max(distance, 0)), mm(l.spec.Print.Safe)),
		phrase.New("move it inwards; every cut and fold wanders a little"))
}

// onHole finds a mark under a hole, a hand hole or a slit, or close to one.
func (l *inspection) onHole(g *ground, panel blank.Panel, marks []mark) {
	for _, hole := range openingsOn(g.piece, panel) {
		keep := hole.radius + l.spec.Print.Safe
		around := geometry.Rect{Min: hole.from, Max: hole.to}.Inset(-keep)
		for _, m := range marks {
			if gap(g.box(m), around) > 0 || !g.reaches(m, hole, keep-0.5/scale) {
				continue
			}
			message := phrase.New("a mark on the %s lies closer than %s to a hole", placeWord(panel.ID), mm(l.spec.Print.Safe))
			remedy := phrase.New("move it, or move the holes")
			if l.spec.Handle.Kind.HasSlits() {
				message = phrase.New("a mark on the %s lies closer than %s to a slit", placeWord(panel.ID), mm(l.spec.Print.Safe))
				remedy = phrase.New("move it, or move the slits")
			}
			l.find(check.Warning, "mark-near-hole", g.index, hole.from.Mid(hole.to), message, remedy)
			return
		}
	}
}

// acrossFlatFold finds a mark that the flat-fold crease runs through.
func (l *inspection) acrossFlatFold(g *ground, panel blank.Panel, marks []mark) {
	level := g.piece.Levels.FlatFold
	if panel.Column != "front" || level <= g.piece.Levels.Base+geometry.Tolerance {
		return
	}
	for _, m := range marks {
		box := g.box(m)
		if box.Min.Y > level-1 || box.Max.Y < level+1 || g.room(panel, m) < 0 {
			continue
		}
		l.find(check.Warning, "mark-on-flat-fold", g.index, geometry.Vec2{X: box.Center().X, Y: level},
			phrase.New("the flat-fold crease runs through a mark on the front"),
			phrase.New("move it up or down; bags that are delivered flat show the crease"))
		return
	}
}

// room returns how far a mark stays from the edge of its panel; negative for one that
// runs over it, as far as the picture of the panel tells.
func (g *ground) room(panel blank.Panel, m mark) float64 {
	box := g.box(m)
	return min(box.Min.X-panel.Box.Min.X, panel.Box.Max.X-box.Max.X, box.Min.Y-panel.Box.Min.Y, panel.Box.Max.Y-box.Max.Y)
}

// box returns where a mark lies on the blank.
func (g *ground) box(m mark) geometry.Rect {
	const half = 0.5 / scale
	low, high := g.at(m.box.Min.X, m.box.Max.Y-1), g.at(m.box.Max.X-1, m.box.Min.Y)
	return geometry.Rect{Min: low, Max: high}.Inset(-half)
}

func (g *ground) middle(m mark) geometry.Vec2 { return g.box(m).Center() }

// reaches tells whether ink that differs from white lies within a distance of the middle
// line of an opening and inside the box of a mark.
func (g *ground) reaches(m mark, hole opening, distance float64) bool {
	area := g.pixels(geometry.Rect{Min: hole.from, Max: hole.to}.Inset(-distance)).Intersect(m.box)
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			if hole.away(g.at(x, y)) < distance && g.inked(x, y) {
				return true
			}
		}
	}
	return false
}

// marksOn returns the marks of a panel that end on it. What runs out over its edges
// is meant to, as a ground, a band or a picture that bleeds, or cutOff finds it. any is
// false where no ground can be made out.
func (g *ground) marksOn(panel blank.Panel) (marks []mark, any bool) {
	area := g.pixels(panel.Box)
	behind, share := g.commonest(area)
	if area.Empty() || share < groundShare {
		return nil, false
	}
	width := area.Dx()
	differs := make([]bool, width*area.Dy())
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			differs[(y-area.Min.Y)*width+x-area.Min.X] = g.far(x, y, behind)
		}
	}
	var waiting []int
	for start, is := range differs {
		if !is {
			continue
		}
		m := mark{box: image.Rect(start%width, start/width, start%width+1, start/width+1)}
		waiting, differs[start] = append(waiting[:0], start), false
		for len(waiting) > 0 {
			i := waiting[len(waiting)-1]
			waiting = waiting[:len(waiting)-1]
			x, y := i%width, i/width
			m.pixels++
			m.box = m.box.Union(image.Rect(x, y, x+1, y+1))
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					nx, ny := x+dx, y+dy
					if nx < 0 || ny < 0 || nx >= width || ny >= area.Dy() || !differs[ny*width+nx] {
						continue
					}
					differs[ny*width+nx] = false
					waiting = append(waiting, ny*width+nx)
				}
			}
		}
		edge := m.box.Min.X == 0 || m.box.Min.Y == 0 || m.box.Max.X == width || m.box.Max.Y == area.Dy()
		if m.box = m.box.Add(area.Min); m.pixels >= leastMark && !edge {
			marks = append(marks, m)
		}
	}
	return marks, true
}

// commonest returns the colour that most of an area has, in steps of 16, and its
// share.
func (g *ground) commonest(area image.Rectangle) (colour [3]uint8, share float64) {
	var counts [1 << 12]int // by the upper half of each channel
	for y := area.Min.Y; y < area.Max.Y; y++ {
		row := g.picture.Pix[y*g.picture.Stride+4*area.Min.X : y*g.picture.Stride+4*area.Max.X]
		for ; len(row) >= 4; row = row[4:] {
			counts[int(row[0]>>4)<<8|int(row[1]&0xf0)|int(row[2]>>4)]++
		}
	}
	step := 0 // of two that are as common the darker in red, green, blue
	for i, count := range counts {
		if count > counts[step] {
			step = i
		}
	}
	most := counts[step]
	colour = [3]uint8{uint8(step >> 8), uint8(step >> 4 & 15), uint8(step & 15)}
	for i := range colour {
		colour[i] = colour[i]<<4 | 8
	}
	return colour, float64(most) / math.Max(float64(area.Dx()*area.Dy()), 1)
}

// far tells whether a pixel is of another colour.
func (g *ground) far(x, y int, colour [3]uint8) bool {
	pixel := g.picture.Pix[y*g.picture.Stride+4*x:][:3]
	for i := range 3 {
		if d := int(pixel[i]) - int(colour[i]); d > contrast || d < -contrast {
			return true
		}
	}
	return false
}
