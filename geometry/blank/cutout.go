package blank

import "gussetwright/geometry"

// CutOut is an opening in the paper that is cut, not punched: a hand hole or a slit.
type CutOut struct {
	Role  Role
	Shape geometry.Path // closed, anticlockwise, of four edges: straight, round, straight, round
}

// IsCutOut tells whether lines of the role surround an opening in the paper.
func (r Role) IsCutOut() bool { return r == RoleHandHole || r == RoleSlit }

// CutOuts returns the openings that are cut in the piece. In Lines the four edges of
// one follow each other.
func (p *Piece) CutOuts() []CutOut {
	var all []CutOut
	var edges []geometry.Vertex
	for _, line := range p.Lines {
		if !line.Role.IsCutOut() {
			continue
		}
		edges = append(edges, geometry.Vertex{Vec2: line.From, Bulge: line.Bulge})
		if len(edges) == 4 {
			all = append(all, CutOut{line.Role, geometry.Path{Vertices: edges, Closed: true}})
			edges = nil
		}
	}
	return all
}

// cutOut adds the edges of an opening to the lines.
func (p *Piece) cutOut(role Role, shape geometry.Path) {
	for i := range shape.Len() {
		p.Lines = append(p.Lines, Line{Edge: shape.Edge(i), Kind: Cut, Role: role, Fold: NoFold})
	}
}

// opening is what is punched or cut out of paper, with its bounds.
type opening struct {
	outline geometry.Path
	box     geometry.Rect
}

func (o opening) moved(d geometry.Vec2) opening {
	return opening{o.outline.Translate(d), geometry.Rect{Min: o.box.Min.Add(d), Max: o.box.Max.Add(d)}}
}

// openings returns all that is punched or cut out of the piece, widened by a margin.
func (p *Piece) openings(margin float64) []opening {
	all := make([]opening, 0, len(p.Holes)+8)
	for _, hole := range p.Holes {
		radius := hole.Diameter/2 + margin
		box := geometry.Rect{Min: hole.Center, Max: hole.Center}.Inset(-radius)
		all = append(all, opening{geometry.Circle(hole.Center, radius), box})
	}
	for _, cut := range p.CutOuts() {
		box := cut.Shape.Bounds().Inset(-margin)
		all = append(all, opening{roundEnded(box.Center(), box.Width(), box.Height()), box})
	}
	return all
}

// reachesInto tells whether two boxes share more than a border.
func reachesInto(a, b geometry.Rect) bool {
	return a.Min.X < b.Max.X && a.Max.X > b.Min.X && a.Min.Y < b.Max.Y && a.Max.Y > b.Min.Y
}

// areaWithin adds up the areas of openings, of one across the border the share of its
// box that lies within.
func areaWithin(openings []geometry.Path, box geometry.Rect) float64 {
	sum := 0.0
	for _, opening := range openings {
		own := opening.Bounds()
		width := min(own.Max.X, box.Max.X) - max(own.Min.X, box.Min.X)
		height := min(own.Max.Y, box.Max.Y) - max(own.Min.Y, box.Min.Y)
		sum += opening.Area() * max(width, 0) * max(height, 0) / own.Area()
	}
	return sum
}
