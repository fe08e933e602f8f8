package vector

import (
	"context"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork/vector/outline"
)

// Read reads an SVG file. It gives an error for what is none, is broken or goes
// beyond the limits of this package, see ErrTooMuch; it never fetches or runs
// anything. What cannot be shown stands in the notes of the drawing.
func Read(ctx context.Context, data []byte) (*Drawing, error) {
	drawing, err := read(ctx, data)
	if err != nil {
		return nil, phrase.Errorf("read the SVG file: %s", err)
	}
	return drawing, nil
}

func read(ctx context.Context, data []byte) (*Drawing, error) {
	r := &reader{
		ctx: ctx, paths: map[*node]outline.Path{}, images: map[*node]*Image{},
		clips: map[clipKey]*Clip{}, servers: map[*node]*server{},
	}
	elements, err := plant(ctx, data, &r.notes)
	if err != nil {
		return nil, err
	}
	r.ids = elements.ids
	if err := r.dress(elements); err != nil {
		return nil, err
	}
	if err := r.draw(elements.root); err != nil {
		return nil, err
	}
	r.drawing.Notes = r.notes.phrases()
	r.drawing.Text = r.notes[liveText] > 0
	return &r.drawing, nil
}

// reader turns elements into shapes.
type reader struct {
	ctx     context.Context
	ids     map[string]*node
	notes   notebook
	drawing Drawing

	// What was read already and is used again.
	paths   map[*node]outline.Path
	images  map[*node]*Image
	clips   map[clipKey]*Clip
	servers map[*node]*server
	inside  []*node // the uses and clips that are being written out

	effort, shapes, segments, pixels int
}

// frame is what an element finds around it.
type frame struct {
	place geometry.Affine // from its plane to mm
	style style
	port  geometry.Vec2 // the size of the viewport, for percentages
	// groups and clips are how many with an opacity and with a clip stand around it.
	groups, clips int
}

// work adds to the effort and gives an error when it is too much or in vain.
func (r *reader) work(amount int) error {
	const rest = 1 << 16
	before := r.effort
	if r.effort += amount; r.effort > mostEffort {
		return phrase.Errorf("the drawing repeats its parts so often that it is %s; write out or remove what is used many times", ErrTooMuch)
	}
	if before/rest != r.effort/rest {
		return r.ctx.Err()
	}
	return nil
}

// dress gives every element what the style sheets say of it.
func (r *reader) dress(t *tree) error {
	sheet := newStyleSheet()
	for _, n := range t.sheets {
		unknown, err := sheet.read(string(n.text))
		if err != nil {
			return err
		}
		for range unknown {
			r.notes.add(styleRule)
		}
	}
	var visit func(n *node) error
	visit = func(n *node) error {
		if err := r.work(sheet.cascade(n)); err != nil {
			return err
		}
		for _, child := range n.children {
			if err := visit(child); err != nil {
				return err
			}
		}
		return nil
	}
	return visit(t.root)
}

// draw finds out how large the drawing is and reads its shapes.
func (r *reader) draw(root *node) error {
	style, broken := usual().within(root)
	r.complain(broken)
	box, boxed := viewBox(root)
	size, stated, err := rootSize(root, box, boxed, style.font)
	if err != nil {
		return err
	}
	r.drawing.Size, r.drawing.Stated = size.Scale(mmPerPixel), stated
	if w, h := r.drawing.Size.X, r.drawing.Size.Y; !(min(w, h) >= smallest && max(w, h) <= largest) {
		return phrase.Errorf("the drawing is %.4g × %.4g mm, but must be between %g and %d mm; set its width and height", w, h, smallest, largest)
	}
	f := frame{
		place: geometry.Affine{U: geometry.Vec2{X: mmPerPixel}, V: geometry.Vec2{Y: -mmPerPixel}, Origin: geometry.Vec2{Y: r.drawing.Size.Y}},
		style: style, port: size,
	}
	if boxed {
		f.place = f.place.After(parseFit(root.attribute("preserveAspectRatio")).into(box, geometry.RectAt(0, 0, size.X, size.Y)))
		f.port = geometry.Vec2{X: box.Width(), Y: box.Height()}
	}
	if style.absent {
		return nil
	}
	shapes, err := r.group(root, f, func(f frame) ([]Shape, error) { return r.children(root, f) })
	r.drawing.Shapes = shapes
	return err
}

func (r *reader) complain(broken int) {
	for range broken {
		r.notes.add(brokenValue)
	}
}

// viewBox returns the viewBox of an element, and whether it has one that is of use.
func viewBox(n *node) (geometry.Rect, bool) {
	v, whole := listOf(n.attribute("viewBox"))
	if !whole || len(v) != 4 || !(v[2] > 0 && v[3] > 0) {
		return geometry.Rect{}, false
	}
	return geometry.RectAt(v[0], v[1], v[2], v[3]), true
}

// rootSize returns the size of the drawing in px, and whether that is stated in a
// unit of paper. What is missing or relative follows from the viewBox.
func rootSize(root *node, box geometry.Rect, boxed bool, font float64) (size geometry.Vec2, stated bool, err error) {
	width, hasWidth, err := rootSide(root, "width")
	if err != nil {
		return size, false, err
	}
	height, hasHeight, err := rootSide(root, "height")
	if err != nil {
		return size, false, err
	}
	size = geometry.Vec2{X: width.in(0, font), Y: height.in(0, font)}
	stated = (hasWidth || hasHeight) && (!hasWidth || width.onPaper()) && (!hasHeight || height.onPaper())
	switch {
	case hasWidth && hasHeight:
	case !boxed:
		return size, false, phrase.Errorf("the drawing has no size: give it a width and a height, or a viewBox")
	case hasWidth:
		size.Y = size.X * box.Height() / box.Width()
	case hasHeight:
		size.X = size.Y * box.Width() / box.Height()
	default:
		size = geometry.Vec2{X: box.Width(), Y: box.Height()}
	}
	return size, stated, nil
}

// rootSide reads the width or height of the drawing, unless it is left open.
func rootSide(root *node, name string) (length, bool, error) {
	text := root.attribute(name)
	side, ok := parseLength(text)
	switch {
	case text == "" || text == "auto":
		return length{}, false, nil
	case !ok || side.value <= 0:
		return length{}, false, phrase.Errorf("the %s of the drawing is %.40q: set it to a length above 0, such as 100mm", name, text)
	case side.unit == "%":
		return length{}, false, nil
	}
	return side, true, nil
}

// length reads a length of an attribute; share is of what percentages are.
func (r *reader) length(n *node, name, usual string, f frame, share float64) float64 {
	text, there := n.lookup(name)
	if !there {
		text = usual
	}
	l, ok := parseLength(text)
	if !ok {
		if text != "auto" && text != "" {
			r.notes.add(brokenValue)
		}
		l, _ = parseLength(usual)
	}
	return l.in(share, f.style.font)
}

// diagonal is what percentages are of that are neither of the width nor of the
// height of the viewport.
func (f frame) diagonal() float64 { return math.Hypot(f.port.X, f.port.Y) / math.Sqrt2 }

func tooFar(p geometry.Vec2) error {
	return phrase.Errorf("something goes to (%.3g, %.3g) mm, over %g mm away; remove or shrink what lies far outside of the drawing", p.X, p.Y, float64(farthest))
}
