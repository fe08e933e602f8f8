package meeting

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/foldedpane"
	"gussetwright/app/paneview"
	"gussetwright/render/solid"
)

// arrange gives every figure that is seen its place, and has it drawn.
func (s *stage) arrange() {
	if len(s.seen) == 0 || s.Size().Width < 1 || s.Size().Height < 1 {
		return
	}
	if s.several {
		s.arrangeCards()
	} else {
		s.arrangeAlone(s.seen[0])
	}
	s.draw()
}

func (s *stage) padding() float32 { return s.Theme().Size(theme.SizeNamePadding) }

// arrangeAlone gives a bag all of the stage, with what is written in a corner.
func (s *stage) arrangeAlone(f *figure) {
	f.style(s.Theme(), false, false)
	f.write(false)
	size, inset := s.Size(), 2*s.padding()
	put(f.picture, fyne.NewPos(0, 0), size)
	put(f.border, fyne.NewPos(0, 0), size)
	s.placeCaption(f, fyne.NewPos(inset, inset), size.Width/3)
}

// placeCaption puts what is written beside a figure below each other.
func (s *stage) placeCaption(f *figure, at fyne.Position, width float32) {
	put(f.name, at, fyne.NewSize(width, f.name.MinSize().Height))
	at.Y += f.name.MinSize().Height
	for _, line := range f.lines {
		tall := line.HeightFor(width)
		put(line, at, fyne.NewSize(width, tall))
		at.Y += tall
	}
}

// arrangeCards puts the figures on cards side by side. All bags have equal room; the
// thing for scale needs only its share.
func (s *stage) arrangeCards() {
	size, gap := s.Size(), s.padding()
	shares := float32(0)
	for _, f := range s.seen {
		shares += s.share(f)
	}
	unit := max((size.Width-gap*float32(len(s.seen)-1))/shares, 1)
	before := s.brief
	x, below := float32(0), s.writeCaptions(unit-2*gap)
	if s.brief != before {
		s.view.page.speak() // what cards have no room for
	}
	for _, f := range s.seen {
		width := unit * s.share(f)
		const inside = 2 // of the border
		put(f.border, fyne.NewPos(x, 0), fyne.NewSize(width, size.Height))
		put(f.picture, fyne.NewPos(x+inside, inside), fyne.NewSize(max(width-2*inside, 1), max(size.Height-below-inside, 1)))
		s.placeCaption(f, fyne.NewPos(x+gap, size.Height-below+gap/2), max(width-2*gap, 1))
		x += width + gap
	}
}

// share is the part of a card that a figure needs.
func (s *stage) share(f *figure) float32 {
	const least = 0.45
	if f != s.beside {
		return 1
	}
	return float32(min(max(f.own.Radius/max(s.frame.Radius, 1), least), 1))
}

// writeCaptions writes the captions of cards, in brief where they would leave too little
// of the pictures, and returns the height that they take.
func (s *stage) writeCaptions(width float32) (height float32) {
	const most = 0.36 // of a card
	for _, brief := range []bool{false, true} {
		height = 0
		for _, f := range s.seen {
			f.style(s.Theme(), f == s.mark(), true)
			f.write(brief)
			height = max(height, 1.5*s.padding()+f.name.MinSize().Height+f.linesHeight(width*s.share(f)))
		}
		if s.brief = brief; height <= most*s.Size().Height {
			break
		}
	}
	return height
}

// mark returns the figure that is chosen, or nil.
func (s *stage) mark() *figure {
	if s.view.chosen == none {
		return nil
	}
	return s.kept[s.view.chosen]
}

func put(object fyne.CanvasObject, at fyne.Position, size fyne.Size) {
	object.Move(at)
	object.Resize(size)
}

// reframe takes in every bag there is, seen or not, so that a bag looks as large beside
// others as alone. While a slider moves the frame holds still, or the bag would seem to
// shrink in its height as it grows in its width; it only widens when the bag would leave
// it. At rest it holds still while the bags are a little smaller. It tells whether it
// moved.
func (s *stage) reframe(anew bool) bool {
	needed := solid.Frame{Radius: s.beside.own.Radius, Rise: s.beside.own.Rise}
	for _, f := range append([]*figure{s.present}, s.kept[:]...) {
		if f.snapshot != nil && (f == s.present || s.view.kept[f.place] != nil) {
			needed.Radius, needed.Rise = max(needed.Radius, f.own.Radius), max(needed.Rise, f.own.Rise)
		}
	}
	const loose = 0.8
	const spare = 1.15 // a bag hardly ever fills the space around it
	ball := func(f solid.Frame) float64 { return math.Hypot(f.Radius, f.Rise) }
	before := s.frame
	switch {
	case anew || !s.view.state.Dragging && ball(needed) < loose*ball(s.frame):
		s.frame = needed
	case s.view.state.Dragging:
		s.frame.Radius, s.frame.Rise = max(s.frame.Radius, needed.Radius/spare), max(s.frame.Rise, needed.Rise/spare)
	default:
		s.frame.Radius, s.frame.Rise = max(s.frame.Radius, needed.Radius), max(s.frame.Rise, needed.Rise)
	}
	return s.frame != before
}

// draw orders pictures of all that is seen: drafts that are there at once, and when
// nothing moves any more fine ones.
func (s *stage) draw() {
	for _, f := range s.seen {
		s.drawOne(f, draft)
	}
}

// refine follows the last draft by a fine picture, unless more is to come.
func (s *stage) refine(f *figure) {
	if !s.turning && !(f == s.present && s.view.state.Dragging) {
		s.drawOne(f, fine)
	}
}

// drawOne orders a picture of a figure, where there is room for one.
func (s *stage) drawOne(f *figure, samples int) {
	if !s.view.open || !f.picture.Visible() {
		return
	}
	v, any := s.viewOf(f)
	if !any {
		return
	}
	v.Samples = samples
	f.order(v)
}

// viewOf returns what is seen of a figure. All stand on one line and have one scale.
func (s *stage) viewOf(f *figure) (v solid.View, any bool) {
	v, any = s.fitted(f)
	if !any {
		return v, false
	}
	bag := f
	if f == s.beside {
		bag = s.seen[len(s.seen)-1]
	}
	if fit, any := s.fitted(bag); any {
		scale := min(fit.Scale(), s.scaleBeside(bag, fit.Width))
		v.Camera.Zoom = scale / v.Scale()
	}
	v.Faded = f == s.present && s.view.state.Err != nil
	return v, true
}

// fitted returns the view in which the frame just fits into the place of a figure.
func (s *stage) fitted(f *figure) (v solid.View, any bool) {
	size, density := f.picture.Size(), paneview.Density(s)
	v.Width, v.Height = int(math.Round(float64(size.Width)*density)), int(math.Round(float64(size.Height)*density))
	if v.Width < 1 || v.Height < 1 {
		return v, false
	}
	v.Samples, v.Camera, v.Look, v.Model = draft, s.camera, foldedpane.Look(), f.model
	v.Frame = s.frame
	v.Frame.Middle = f.own.Middle
	v.Frame.Middle.Z += s.frame.Rise - f.own.Rise // all stand on one ground
	if f == s.beside || !s.several {
		v.Reference, v.Side = s.reference, s.side
	}
	if f.snapshot != nil {
		v.Paper = solid.PaperOf(f.snapshot.Spec.Paper)
	}
	return v, true
}

// scaleBeside returns the scale, in pixels per mm, at which there is room for what stands
// beside a bag that is alone.
func (s *stage) scaleBeside(f *figure, width int) float64 {
	if s.several || s.reference == solid.NoReference {
		return math.Inf(1)
	}
	both := f.model.Frame(s.reference, s.side)
	const margin = 1.1 // what is near looks larger
	reach := both.Radius + both.Middle.Sub(f.own.Middle).Length()
	return float64(width) / 2 / (margin * reach)
}
