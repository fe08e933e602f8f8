package vector

import (
	"strings"

	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
)

// outlineOf works out the path of an element, and whether it depends on what is
// around the element.
func (r *reader) outlineOf(n *node, f frame) (path outline.Path, relative bool, err error) {
	along := func(name string) float64 { return r.length(n, name, "0", f, f.port.X) }
	down := func(name string) float64 { return r.length(n, name, "0", f, f.port.Y) }
	switch n.name {
	case "path":
		path, whole, err := parsePath(n.attribute("d"))
		if !whole && err == nil {
			r.notes.add(brokenPath)
		}
		return path, false, err
	case "rect":
		return r.rect(n, f), true, nil
	case "circle":
		if radius := r.length(n, "r", "0", f, f.diagonal()); radius > 0 {
			path = ellipse(geometry.Vec2{X: along("cx"), Y: down("cy")}, radius, radius)
		}
	case "ellipse":
		rx, ry := radii(n, along("rx"), down("ry"))
		if rx > 0 && ry > 0 {
			path = ellipse(geometry.Vec2{X: along("cx"), Y: down("cy")}, rx, ry)
		}
	case "line":
		path.Move(geometry.Vec2{X: along("x1"), Y: down("y1")})
		path.Line(geometry.Vec2{X: along("x2"), Y: down("y2")})
	case "polyline", "polygon":
		path, err = r.poly(n)
		return path, false, err
	}
	return path, true, nil
}

// radii returns two half axes, of which a missing one is as the other.
func radii(n *node, rx, ry float64) (float64, float64) {
	missing := func(name string) bool { text := n.attribute(name); return text == "" || text == "auto" }
	switch {
	case missing("rx"):
		rx = ry
	case missing("ry"):
		ry = rx
	}
	return rx, ry
}

func (r *reader) rect(n *node, f frame) outline.Path {
	width, height := r.length(n, "width", "0", f, f.port.X), r.length(n, "height", "0", f, f.port.Y)
	if !(width > 0 && height > 0) {
		return outline.Path{}
	}
	rx, ry := radii(n, r.length(n, "rx", "0", f, f.port.X), r.length(n, "ry", "0", f, f.port.Y))
	return rectangle(r.length(n, "x", "0", f, f.port.X), r.length(n, "y", "0", f, f.port.Y), width, height, min(rx, width/2), min(ry, height/2))
}

// poly reads the points of a polyline or polygon. An odd number ends with the last
// whole point.
func (r *reader) poly(n *node) (path outline.Path, err error) {
	text := n.attribute("points")
	if strings.Count(text, " ")+strings.Count(text, ",") > 8*mostInPath {
		return path, tooMany("lines of one path", mostInPath, "simplify the path")
	}
	list, whole := listOf(text)
	if !whole || len(list)%2 == 1 {
		r.notes.add(brokenPath)
	}
	if len(list) > 2*mostInPath {
		return path, tooMany("lines of one path", mostInPath, "simplify the path")
	}
	for i := 0; i+1 < len(list); i += 2 {
		p := geometry.Vec2{X: list[i], Y: list[i+1]}
		if i == 0 {
			path.Move(p)
		} else {
			path.Line(p)
		}
	}
	if n.name == "polygon" && !path.Empty() {
		path.Close()
	}
	return path, nil
}
