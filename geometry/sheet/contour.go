package sheet

import (
	"math"

	"gussetwright/geometry"
)

// contour is an outline as it lies on the sheet, with straight edges, in the box
// from the origin to size.
type contour struct {
	corners []geometry.Vec2
	// closed are the corners of the contour with its slots filled: no neighbour
	// reaches into them.
	closed []geometry.Vec2
	size   geometry.Vec2
}

// chordsOfArc is into how many chords an arc of an outline is cut.
const chordsOfArc = 8

// newContour takes the ends of arcs inside the box for those of slots.
func newContour(path *geometry.Path) contour {
	var c contour
	box := path.Bounds()
	within := box.Inset(geometry.Tolerance)
	bent := path.Len() > 0 && path.Edge(path.Len()-1).Bulge != 0
	for i := range path.Vertices {
		e := path.Edge(i)
		c.corners = append(c.corners, e.From)
		atArc := bent || e.Bulge != 0
		bent = e.Bulge != 0
		if !atArc || e.From.X < within.Min.X || e.From.X > within.Max.X || e.From.Y < within.Min.Y || e.From.Y > within.Max.Y {
			c.closed = append(c.closed, e.From)
		}
		if bent {
			arc := e.Arc()
			for k := 1; k < chordsOfArc; k++ {
				c.corners = append(c.corners, arc.At(float64(k)/chordsOfArc))
			}
		}
	}
	return c.moved(box.Max.Sub(box.Min), func(p geometry.Vec2) geometry.Vec2 { return p.Sub(box.Min) })
}

// missing returns the area of the box that the contour, its slots filled, leaves.
func (c *contour) missing() float64 {
	return c.size.X*c.size.Y - math.Abs(geometry.Polygon(c.closed...).Area())
}

// moved returns the contour after to has moved each corner, in a box of another size.
func (c *contour) moved(size geometry.Vec2, to func(geometry.Vec2) geometry.Vec2) contour {
	all := func(points []geometry.Vec2) []geometry.Vec2 {
		list := make([]geometry.Vec2, len(points))
		for i, p := range points {
			list[i] = to(p)
		}
		return list
	}
	return contour{corners: all(c.corners), closed: all(c.closed), size: size}
}

// onItsSide returns the contour turned anticlockwise by a quarter turn.
func (c *contour) onItsSide() contour {
	return c.moved(swapped(c.size), func(p geometry.Vec2) geometry.Vec2 { return geometry.Vec2{X: c.size.Y - p.Y, Y: p.X} })
}

// headToTail returns the contour turned by half a turn.
func (c *contour) headToTail() contour { return c.moved(c.size, c.size.Sub) }

// mirrored returns the contour with left and right exchanged.
func (c *contour) mirrored() contour {
	return c.moved(c.size, func(p geometry.Vec2) geometry.Vec2 { return geometry.Vec2{X: c.size.X - p.X, Y: p.Y} })
}

// transposed returns the contour with x and y exchanged.
func (c *contour) transposed() contour { return c.moved(swapped(c.size), swapped) }

func swapped(v geometry.Vec2) geometry.Vec2 { return geometry.Vec2{X: v.Y, Y: v.X} }

// edges returns the edges from corner to corner.
func edges(corners []geometry.Vec2) []edge {
	list := make([]edge, len(corners))
	for i, p := range corners {
		list[i] = newEdge(p, corners[(i+1)%len(corners)])
	}
	return list
}

// edge is an edge of a contour; low is not above high.
type edge struct {
	low, high geometry.Vec2
	left      geometry.Vec2 // of length 1, square to the edge
}

func newEdge(a, b geometry.Vec2) edge {
	if a.Y > b.Y {
		a, b = b, a
	}
	return edge{a, b, b.Sub(a).Left().Unit()}
}
