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
