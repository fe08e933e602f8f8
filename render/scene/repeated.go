package scene

import (
	"errors"
	"fmt"

	"gussetwright/geometry"
)

// Part is what stands in a drawing several times, such as the cuts of a blank on a
// press sheet. All its items have one role and none is itself Repeated. Files that can
// hold it once know it by its pointer.
type Part struct {
	Role  Role
	Items []Item
	// Clip bounds what is shown to the inside of at least one of these closed,
	// anticlockwise paths; nil for no bounds.
	Clip []geometry.Path
}

// Place is where a part stands.
type Place struct {
	At     geometry.Affine // a turn and a displacement, from the part to the drawing
	Window geometry.Rect   // in the drawing; nothing is shown outside, unless it is empty
}

// Repeated is a part in each of its places.
type Repeated struct {
	Part   *Part
	Places []Place
}

// Layer returns the role of the part.
func (r Repeated) Layer() Role {
	if r.Part == nil {
		return Artwork
	}
	return r.Part.Role
}

// Single returns the items of the part in each place, for files that hold everything as
// often as it is seen. Bounds are left out: they serve artwork, which such files do not
// show.
func (r Repeated) Single() []Item {
	items := make([]Item, 0, len(r.Part.Items)*len(r.Places))
	for _, place := range r.Places {
		for _, item := range r.Part.Items {
			items = append(items, moved(item, place.At))
		}
	}
	return items
}

// Singles returns the drawings with single items in place of what is Repeated.
func Singles(drawings []Drawing) []Drawing {
	list := make([]Drawing, len(drawings))
	for i, drawing := range drawings {
		list[i] = drawing
		list[i].Items = make([]Item, 0, len(drawing.Items))
		for _, item := range drawing.Items {
			if repeated, is := item.(Repeated); is && repeated.Part != nil {
				list[i].Items = append(list[i].Items, repeated.Single()...)
				continue
			}
			list[i].Items = append(list[i].Items, item)
		}
	}
	return list
}

// moved returns the item after a turn and a displacement.
func moved(item Item, at geometry.Affine) Item {
	switch item := item.(type) {
	case Stroke:
		item.Path = movedPath(item.Path, at)
		return item
	case Fill:
		item.Path = movedPath(item.Path, at)
		return item
	case Label:
		item.At = at.At(item.At)
		item.Turn += at.U.Angle()
		return item
	case Placed:
		item.At = at.After(item.At)
		item.Clip = movedPath(item.Clip, at)
		return item
	}
	return item
}

func movedPath(path geometry.Path, at geometry.Affine) geometry.Path {
	vertices := make([]geometry.Vertex, len(path.Vertices))
	for i, v := range path.Vertices {
		vertices[i] = geometry.Vertex{Vec2: at.At(v.Vec2), Bulge: v.Bulge}
	}
	return geometry.Path{Vertices: vertices, Closed: path.Closed}
}

func (r Repeated) check() error {
	if r.Part == nil {
		return errors.New("nothing is repeated; give the part")
	}
	for i, item := range r.Part.Items {
		if err := r.Part.checkItem(item); err != nil {
			return fmt.Errorf("item %d of a part: %w", i, err)
		}
	}
	for _, path := range r.Part.Clip {
		if err := checkPath(path); err != nil {
			return err
		}
	}
	for _, place := range r.Places {
		at := place.At
		ways := numbers{{"x", at.Origin.X}, {"y", at.Origin.Y}, {"width across", at.U.X}, {"width up", at.U.Y}, {"height across", at.V.X}, {"height up", at.V.Y}}
		if err := ways.check(-Farthest); err != nil {
			return err
		}
	}
	return nil
}

func (p *Part) checkItem(item Item) error {
	if _, is := item.(Repeated); is {
		return errors.New("it is itself repeated; put its items into the part")
	}
	if err := checkItem(item); err != nil {
		return err
	}
	if item.Layer() != p.Role {
		return fmt.Errorf("its role is %s, that of the part %s; make a part for each role", item.Layer(), p.Role)
	}
	return nil
}
