package press

import (
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/scene"
)

// Print returns what is printed on a piece, in its own place, as items of the role
// Artwork; nil for bare paper.
type Print func(b *blank.Blank, piece int) []scene.Item

// dieRoles are the kinds of line that a die is made from, and the areas that varnish
// must keep off.
var dieRoles = []scene.Role{scene.Gluing, scene.Creasing, scene.ReverseCreasing, scene.Punching, scene.Cutting}

// source is a piece of a bag.
type source struct {
	blank *blank.Blank
	piece int
}

// ink is a piece whose ink is held to a distance from its outline, or to its bleed
// where that is negative.
type ink struct {
	source
	within float64
}

// stock keeps the parts of pieces, the same for all forms.
type stock struct {
	print  Print
	prints map[ink]*scene.Part
	dies   map[source][]*scene.Part
	lines  map[*blank.Blank][]scene.Drawing
}

func newStock(print Print) *stock {
	return &stock{print, map[ink]*scene.Part{}, map[source][]*scene.Part{}, map[*blank.Blank][]scene.Drawing{}}
}

// printed returns the artwork of a piece, nil where there is none.
func (s *stock) printed(of ink) *scene.Part {
	if s.print == nil {
		return nil
	}
	part, known := s.prints[of]
	if !known {
		if items := s.print(of.blank, of.piece); len(items) > 0 {
			piece := &of.blank.Pieces[of.piece]
			bleed := of.blank.Spec.Print.Bleed
			clip := []geometry.Path{piece.BleedOutline(bleed)}
			switch {
			case of.within >= 0:
				clip = around(piece.Outline, of.within)
			case len(clip[0].Vertices) == 0: // edges too short to be moved out by the bleed
				clip = around(piece.Outline, bleed)
			}
			part = &scene.Part{Role: scene.Artwork, Items: items, Clip: clip}
		}
		s.prints[of] = part
	}
	return part
}

// die returns the lines of a piece, a part for each role.
func (s *stock) die(of source) []*scene.Part {
	if parts, known := s.dies[of]; known {
		return parts
	}
	if s.lines[of.blank] == nil {
		s.lines[of.blank] = dieline.Templates(of.blank, nil)
	}
	byRole := s.lines[of.blank][of.piece].ByRole()
	var parts []*scene.Part
	for _, role := range dieRoles {
		part := &scene.Part{Role: role}
		for _, item := range byRole[role] {
			if belongs(item) {
				part.Items = append(part.Items, item)
			}
		}
		if len(part.Items) > 0 {
			parts = append(parts, part)
		}
	}
	s.dies[of] = parts
	return parts
}

// belongs leaves out lettering, and the hatching of glue areas, which makes room for
// names that a press sheet does not show.
func belongs(item scene.Item) bool {
	stroke, is := item.(scene.Stroke)
	return is && (stroke.Role != scene.Gluing || stroke.Path.Closed)
}
