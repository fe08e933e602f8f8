package vector

import (
	"slices"
	"strings"

	"gussetwright/geometry"
)

// children reads the shapes of all elements within one.
func (r *reader) children(n *node, f frame) ([]Shape, error) {
	var list []Shape
	for _, child := range n.children {
		shapes, err := r.element(child, f)
		if err != nil {
			return nil, err
		}
		list = append(list, shapes...)
	}
	return list, nil
}

// element reads the shapes of an element that stands in a frame.
func (r *reader) element(n *node, around frame) ([]Shape, error) {
	if err := r.work(n.weight + perElement); err != nil {
		return nil, err
	}
	if !r.drawn(n) {
		return nil, nil
	}
	f, ok := r.enter(n, around)
	if !ok || f.style.absent {
		return nil, nil
	}
	switch n.name {
	case "g", "a":
		return r.group(n, f, func(f frame) ([]Shape, error) { return r.children(n, f) })
	case "switch":
		return r.group(n, f, func(f frame) ([]Shape, error) { return r.choice(n, f) })
	case "svg":
		return r.group(n, f, func(f frame) ([]Shape, error) { return r.viewport(n, f, n) })
	case "use":
		return r.use(n, f)
	case "image":
		return r.image(n, f)
	}
	return r.figure(n, f)
}

// drawn tells whether an element may leave anything; it notes what is not shown.
func (r *reader) drawn(n *node) bool {
	switch n.name {
	case "g", "a", "switch", "svg", "use", "image",
		"path", "rect", "circle", "ellipse", "line", "polyline", "polygon":
		return true
	case "text", "flowRoot":
		if says(n) {
			r.notes.add(liveText)
		}
	case "foreignObject", "iframe", "video", "audio", "canvas", "embed", "object":
		r.notes.add(foreign)
	case "defs", "symbol", "clipPath", "mask", "marker", "pattern", "filter", "linearGradient", "radialGradient",
		"style", "title", "desc", "metadata", "script", "handler", "view", "cursor", "font", "font-face", "color-profile",
		"animate", "animateColor", "animateMotion", "animateTransform", "set", "discard", "hatch", "meshgradient", "solidcolor":
		// shown where they are used, if at all, or noted already
	default:
		r.notes.add(unknown)
	}
	return false
}

// says tells whether there are words in an element.
func says(n *node) bool {
	return n.wordy || slices.ContainsFunc(n.children, says)
}

// enter returns the frame for an element: its style and its transformation. It
// returns false for one that cannot be seen as it is flattened.
func (r *reader) enter(n *node, around frame) (frame, bool) {
	f := around
	var broken int
	f.style, broken = around.style.within(n)
	r.complain(broken)
	text := f.style.transform
	if text == "" {
		text = n.attribute("transform")
	}
	if text == "" || n.parent == nil {
		return f, true
	}
	if f.style.origin {
		r.notes.add(transformOrigin)
	}
	motion, ok := parseTransform(text)
	if !ok {
		r.notes.add(brokenValue)
		return f, true
	}
	f.place = f.place.After(motion)
	_, solid := f.place.Inverse()
	return f, solid && finite(f.place)
}

// group reads the shapes of an element with others in it and puts them together.
func (r *reader) group(n *node, f frame, read func(frame) ([]Shape, error)) ([]Shape, error) {
	r.remark(f.style)
	inner := f
	if f.style.opacity < 1 {
		if inner.groups++; inner.groups > mostGroups {
			return nil, tooMany("groups with an opacity within each other", mostGroups, "ungroup some")
		}
	}
	if f.style.clip != "" {
		if inner.clips++; inner.clips > mostClips {
			return nil, tooManyClips()
		}
	}
	shapes, err := read(inner)
	if err != nil || len(shapes) == 0 || f.style.opacity == 0 {
		return nil, err
	}
	clips, err := r.clipsOf(f, shapes)
	if err != nil {
		return nil, err
	}
	return seen(together(shapes, Look{f.style.opacity, clips})), nil
}

// together puts shapes into a group, unless they look the same without.
func together(shapes []Shape, as Look) []Shape {
	if as.Opacity == 1 && len(as.Clips) == 0 {
		return shapes
	}
	if len(shapes) == 1 {
		look := shapes[0].look()
		look.Opacity *= as.Opacity
		look.Clips = slices.Concat(as.Clips, look.Clips)
		settle(shapes[0])
		return shapes
	}
	return []Shape{&Group{as, shapes}}
}

// settle gives the opacity of a figure to its paint, if it has only one.
func settle(shape Shape) {
	figure, is := shape.(*Figure)
	if !is || figure.Fill.shows() && figure.Stroke.shows() {
		return
	}
	figure.Fill.Opacity *= figure.Opacity
	figure.Stroke.Paint.Opacity *= figure.Opacity
	figure.Opacity = 1
}

// remark notes what of a style is not shown.
func (r *reader) remark(s style) {
	for _, one := range []struct {
		there bool
		what  matter
	}{{s.filter, filters}, {s.mask, masks}, {s.blends, blendModes}} {
		if one.there {
			r.notes.add(one.what)
		}
	}
}

// choice reads the first element of a switch that fits. English stands for any
// language, as nobody is asked for theirs; extensions are never there.
func (r *reader) choice(n *node, f frame) ([]Shape, error) {
	for _, child := range n.children {
		languages, asked := child.lookup("systemLanguage")
		fits := !asked
		for language := range strings.SplitSeq(languages, ",") {
			language = strings.ToLower(strings.TrimSpace(language))
			fits = fits || language == "en" || strings.HasPrefix(language, "en-")
		}
		if child.attribute("requiredExtensions") != "" || !fits || child.name == "foreignObject" {
			continue
		}
		return r.element(child, f)
	}
	return nil, nil
}

// viewport reads what stands in a drawing within the drawing: an svg or symbol
// element, which by takes its place from.
func (r *reader) viewport(n *node, f frame, by *node) ([]Shape, error) {
	side := func(name string, share float64) float64 {
		if _, there := by.lookup(name); there {
			return r.length(by, name, "100%", f, share)
		}
		return r.length(n, name, "100%", f, share)
	}
	width, height := side("width", f.port.X), side("height", f.port.Y)
	if !(width > 0 && height > 0) {
		return nil, nil
	}
	port := geometry.RectAt(0, 0, width, height)
	if n.name == "svg" {
		port = geometry.RectAt(r.length(n, "x", "0", f, f.port.X), r.length(n, "y", "0", f, f.port.Y), width, height)
	}
	inner := f
	if inner.clips++; inner.clips > mostClips {
		return nil, tooManyClips()
	}
	inner.port = geometry.Vec2{X: width, Y: height}
	if box, boxed := viewBox(n); boxed {
		inner.place = f.place.After(parseFit(n.attribute("preserveAspectRatio")).into(box, port))
		inner.port = geometry.Vec2{X: box.Width(), Y: box.Height()}
	} else {
		inner.place = f.place.After(geometry.Shift(port.Min))
	}
	shapes, err := r.children(n, inner)
	if err != nil || len(shapes) == 0 || f.style.overflow {
		return shapes, err
	}
	return together(shapes, Look{1, []*Clip{rectClip(port, f.place)}}), nil
}

func tooManyClips() error {
	return tooMany("groups or drawings with a clip within each other", mostClips, "release some clips")
}

// rectClip returns a rectangle of a plane as a clip.
func rectClip(box geometry.Rect, place geometry.Affine) *Clip {
	path := rectangle(box.Min.X, box.Min.Y, box.Width(), box.Height(), 0, 0)
	return &Clip{[]ClipPart{{Path: path.Moved(place)}}}
}

// use reads what a use element refers to, as if it stood there.
func (r *reader) use(n *node, f frame) ([]Shape, error) {
	target := r.target(n)
	if target == nil {
		return nil, nil
	}
	if slices.Contains(r.inside, target) || contains(target, n) || len(r.inside) >= mostUses {
		r.notes.add(loop)
		return nil, nil
	}
	r.inside = append(r.inside, target)
	defer func() { r.inside = r.inside[:len(r.inside)-1] }()
	move := geometry.Vec2{X: r.length(n, "x", "0", f, f.port.X), Y: r.length(n, "y", "0", f, f.port.Y)}
	return r.group(n, f, func(f frame) ([]Shape, error) {
		f.place = f.place.After(geometry.Shift(move))
		if target.name != "symbol" && target.name != "svg" {
			return r.element(target, f)
		}
		inner, ok := r.enter(target, f)
		if !ok || inner.style.absent {
			return nil, nil
		}
		return r.group(target, inner, func(f frame) ([]Shape, error) { return r.viewport(target, f, n) })
	})
}

// target returns what an element refers to in this file, or nil.
func (r *reader) target(n *node) *node {
	href := strings.TrimSpace(n.attribute("href"))
	if href == "" {
		return nil
	}
	id, inside := strings.CutPrefix(href, "#")
	if !inside {
		r.notes.add(outsideLink)
		return nil
	}
	if r.ids[id] == nil {
		r.notes.add(missing)
	}
	return r.ids[id]
}

// contains tells whether n stands within outer.
func contains(outer, n *node) bool {
	for ; n != nil; n = n.parent {
		if n == outer {
			return true
		}
	}
	return false
}

// bounds returns the smallest upright rectangle around shapes after they were moved.
func bounds(shapes []Shape, by geometry.Affine) (box geometry.Rect, any bool) {
	for _, shape := range shapes {
		var one geometry.Rect
		var there bool
		switch shape := shape.(type) {
		case *Figure:
			one, there = shape.Path.Bounds(by)
		case *Picture:
			one, there = by.After(shape.Place).Bounds(geometry.RectAt(0, 0, 1, 1)), true
		case *Group:
			one, there = bounds(shape.Shapes, by)
		}
		switch {
		case !there:
		case !any:
			box, any = one, true
		default:
			box = box.Union(one)
		}
	}
	return box, any
}
