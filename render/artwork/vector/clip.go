package vector

import (
	"slices"
	"strings"

	"gussetwright/geometry"
)

// clipKey is by what a clip is known: the same element gives another clip in
// another place.
type clipKey struct {
	node  *node
	place geometry.Affine
}

// clipsOf returns the clips that the style of a frame asks for. shapes are what is
// clipped.
func (r *reader) clipsOf(f frame, shapes []Shape) ([]*Clip, error) {
	if f.style.clip == "" || strings.EqualFold(f.style.clip, "none") {
		return nil, nil
	}
	name, _, is := parseReference(f.style.clip)
	if !is {
		r.notes.add(brokenValue)
		return nil, nil
	}
	id, inside := strings.CutPrefix(name, "#")
	n := r.ids[id]
	switch {
	case !inside:
		r.notes.add(outsideLink)
		return nil, nil
	case n == nil || n.name != "clipPath":
		r.notes.add(missing)
		return nil, nil
	case slices.Contains(r.inside, n) || len(r.inside) >= mostUses:
		r.notes.add(loop)
		return nil, nil
	}
	r.inside = append(r.inside, n)
	defer func() { r.inside = r.inside[:len(r.inside)-1] }()
	return r.clipPath(n, f, shapes)
}

// clipPath returns a clipPath element as a clip, and those that clip it in turn.
func (r *reader) clipPath(n *node, f frame, shapes []Shape) ([]*Clip, error) {
	if err := r.work(n.weight); err != nil {
		return nil, err
	}
	f.style = r.styleOf(n)
	whole := f
	if n.attribute("clipPathUnits") == "objectBoundingBox" {
		back, ok := f.place.Inverse()
		box, any := bounds(shapes, back)
		if !ok || !any {
			return []*Clip{{}}, nil
		}
		f.place = f.place.After(geometry.Affine{U: geometry.Vec2{X: box.Width()}, V: geometry.Vec2{Y: box.Height()}, Origin: box.Min})
	}
	around, ok := r.enter(n, frame{place: f.place, style: f.style, port: f.port})
	if !ok {
		return []*Clip{{}}, nil
	}
	around.style = f.style
	key := clipKey{n, around.place}
	clip := r.clips[key]
	if clip == nil {
		clip = &Clip{}
		r.clips[key] = clip
		for _, child := range n.children {
			if err := r.clipPart(clip, child, around); err != nil {
				return nil, err
			}
		}
	}
	more, err := r.clipsOf(whole, shapes)
	return append(more, clip), err
}

// clipPart adds an element of a clipPath to the clip.
func (r *reader) clipPart(clip *Clip, n *node, around frame) error {
	if err := r.work(n.weight); err != nil {
		return err
	}
	f, ok := r.enter(n, around)
	if !ok || f.style.absent || f.style.hidden {
		return nil
	}
	clips, err := r.clipsOf(f, nil)
	if err != nil {
		return err
	}
	switch n.name {
	case "path", "rect", "circle", "ellipse", "line", "polyline", "polygon":
	case "use":
		return r.clipUse(clip, n, f, clips)
	default:
		r.drawn(n) // to note it
		return nil
	}
	if r.shapes++; r.shapes > mostShapes {
		return tooMany("shapes with every clip written out", mostShapes, "simplify the drawing")
	}
	_, path, err := r.path(n, f)
	if err == nil && !path.Empty() {
		clip.Parts = append(clip.Parts, ClipPart{path, f.style.clipEvenOdd, clips})
	}
	return err
}

// clipUse adds a shape that a use element in a clipPath refers to.
func (r *reader) clipUse(clip *Clip, n *node, f frame, clips []*Clip) error {
	target := r.target(n)
	if target == nil || target.name == "use" || target.name == "g" || target.name == "symbol" {
		return nil // only a shape itself can clip (SVG 1.1, 14.3.5)
	}
	move := geometry.Vec2{X: r.length(n, "x", "0", f, f.port.X), Y: r.length(n, "y", "0", f, f.port.Y)}
	f.place = f.place.After(geometry.Shift(move))
	before := len(clip.Parts)
	err := r.clipPart(clip, target, f)
	for i := range clip.Parts[before:] {
		part := &clip.Parts[before+i]
		part.Clips = slices.Concat(part.Clips, clips)
	}
	return err
}

// seen returns the shapes, or none of them when a clip leaves nothing.
func seen(shapes []Shape) []Shape {
	if len(shapes) == 1 {
		for _, clip := range shapes[0].look().Clips {
			if len(clip.Parts) == 0 {
				return nil
			}
		}
	}
	return shapes
}
