package blankpane

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/placement"
)

// guide is a line that is shown while artwork snaps to it.
type guide struct {
	piece    int
	from, to geometry.Vec2
}

// artSnap knows the lines that artwork snaps to: the edges and the middles of its place
// and of the panels in it, and the edges of the bleed.
type artSnap struct {
	placed *placement.Placed
	xs, ys []float64
	reach  float64 // mm
}

func (p *Pane) artSnap(placed *placement.Placed) artSnap {
	s := artSnap{placed: placed, reach: snapReach / p.view.scale}
	add := func(box geometry.Rect) {
		s.xs = append(s.xs, box.Min.X, box.Center().X, box.Max.X)
		s.ys = append(s.ys, box.Min.Y, box.Center().Y, box.Max.Y)
	}
	add(placed.Target)
	add(placed.Target.Inset(-p.laid().Spec.Print.Bleed))
	for _, panel := range p.laid().Pieces[placed.Piece].Panels {
		if placed.Target.Contains(panel.Box.Center()) {
			add(panel.Box)
		}
	}
	return s
}

// nearest returns by how much the nearest of some places differs from the nearest line,
// and that line.
func (s *artSnap) nearest(lines []float64, places ...float64) (by, line float64, found bool) {
	by = s.reach
	for _, place := range places {
		for _, l := range lines {
			if math.Abs(l-place) < math.Abs(by) {
				by, line, found = l-place, l, true
			}
		}
	}
	return by, line, found
}

// move returns how far a box that lies close to lines has to be moved to lie on them,
// and the lines.
func (s *artSnap) move(box geometry.Rect) (by geometry.Vec2, onto snapped, guides []guide) {
	if dx, x, found := s.nearest(s.xs, box.Min.X, box.Center().X, box.Max.X); found {
		by.X, onto.x = dx, true
		guides = append(guides, s.upright(x))
	}
	if dy, y, found := s.nearest(s.ys, box.Min.Y, box.Center().Y, box.Max.Y); found {
		by.Y, onto.y = dy, true
		guides = append(guides, s.level(y))
	}
	return by, onto, guides
}

// snapped tells along which axes something snapped.
type snapped struct{ x, y bool }

// stretch returns the factor, near the given one, at which a corner that moves away from
// a fixed point comes to lie on a line, and that line.
func (s *artSnap) stretch(fixed, corner geometry.Vec2, factor float64) (float64, []guide) {
	way := corner.Sub(fixed)
	best, reach := factor, s.reach/way.Length()
	var guides []guide
	try := func(from, along float64, lines []float64, line func(float64) guide) {
		for _, l := range lines {
			if math.Abs(along) < geometry.Tolerance {
				continue
			}
			if to := (l - from) / along; to > 0 && math.Abs(to-factor) < reach {
				best, reach, guides = to, math.Abs(to-factor), []guide{line(l)}
			}
		}
	}
	try(fixed.X, way.X, s.xs, s.upright)
	try(fixed.Y, way.Y, s.ys, s.level)
	return best, guides
}

func (s *artSnap) upright(x float64) guide {
	clip := s.placed.Clip
	return guide{s.placed.Piece, geometry.Vec2{X: x, Y: clip.Min.Y}, geometry.Vec2{X: x, Y: clip.Max.Y}}
}

func (s *artSnap) level(y float64) guide {
	clip := s.placed.Clip
	return guide{s.placed.Piece, geometry.Vec2{X: clip.Min.X, Y: y}, geometry.Vec2{X: clip.Max.X, Y: y}}
}

// Turning snaps to quarters, and to every 15° between them.
const (
	quarter      = 90
	quarterReach = 10 // degrees in which a quarter takes all
	turnStep     = 15
)

// snapTurn returns the turn that is meant by one that a hand makes, in degrees.
func snapTurn(degrees float64) float64 {
	if straight := math.Round(degrees/quarter) * quarter; math.Abs(straight-degrees) < quarterReach {
		return straight
	}
	return math.Round(degrees/turnStep) * turnStep
}

// halfTurns brings degrees to more than −180 and at most 180.
func halfTurns(degrees float64) float64 {
	degrees = math.Mod(degrees, 360)
	switch {
	case degrees > 180:
		return degrees - 360
	case degrees <= -180:
		return degrees + 360
	}
	return degrees
}
