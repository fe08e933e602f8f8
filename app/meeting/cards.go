package meeting

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/foldedpane"
	"gussetwright/app/paneview"
	"gussetwright/geometry"
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
	s.placeCaption(f, fyne.NewPos(inset, inset), size.Width/3, 0)
}

// placeCaption puts what is written beside a figure below each other, the name in a row of
// at least the given height.
func (s *stage) placeCaption(f *figure, at fyne.Position, width, nameRow float32) {
	for i, text := range f.texts() {
		height := text.(tall).HeightFor(width)
		put(text, at, fyne.NewSize(width, height))
		if i == 0 {
			height = max(height, nameRow)
		}
		at.Y += height
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
	x := float32(0)
	nameRow, below := s.writeCaptions(unit)
	if s.brief != before {
		s.view.page.speak() // what cards have no room for
	}
	for _, f := range s.seen {
		width := unit * s.share(f)
		const inside = 2 // of the border
		put(f.border, fyne.NewPos(x, 0), fyne.NewSize(width, size.Height))
		put(f.picture, fyne.NewPos(x+inside, inside), fyne.NewSize(max(width-2*inside, 1), max(size.Height-below-inside, 1)))
		s.placeCaption(f, fyne.NewPos(x+gap, size.Height-below+gap/2), max(width-2*gap, 1), nameRow)
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
// of the pictures. It returns the height of the names of the bags, below which the sizes of
// all begin on one line, and the height that the captions take.
func (s *stage) writeCaptions(unit float32) (nameRow, height float32) {
	const most = 0.36 // of a card
	for _, brief := range []bool{false, true} {
		nameRow, height = 0, 0
		for _, f := range s.seen {
			f.style(s.Theme(), f == s.mark(), true)
			f.write(brief)
			if f != s.beside {
				nameRow = max(nameRow, f.name.HeightFor(s.inner(f, unit)))
			}
		}
		for _, f := range s.seen {
			width := s.inner(f, unit)
			height = max(height, 1.5*s.padding()+max(nameRow, f.name.HeightFor(width))+f.linesHeight(width))
		}
		if s.brief = brief; height <= most*s.Size().Height {
			break
		}
	}
	return nameRow, height
}

// inner is the width of what is written on the card of a figure.
func (s *stage) inner(f *figure, unit float32) float32 {
	return max(unit*s.share(f)-2*s.padding(), 1)
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
// it. At rest a bag is always as large as it was in the same company. reframe tells whether
// the frame moved.
func (s *stage) reframe(anew bool) bool {
	needed := solid.Frame{Radius: s.beside.own.Radius, Rise: s.beside.own.Rise}
	for _, f := range s.company() {
		needed.Radius, needed.Rise = max(needed.Radius, f.own.Radius), max(needed.Rise, f.own.Rise)
	}
	const spare = 1.15 // a bag hardly ever fills the space around it
	before := s.frame
	if anew || !s.view.state.Dragging {
		s.frame = needed
	} else {
		s.frame.Radius, s.frame.Rise = max(s.frame.Radius, needed.Radius/spare), max(s.frame.Rise, needed.Rise/spare)
	}
	return s.frame != before
}

// company returns every bag there is, seen or not.
func (s *stage) company() (bags []*figure) {
	for _, f := range append([]*figure{s.present}, s.kept[:]...) {
		if f.snapshot != nil && (f == s.present || s.view.kept[f.place] != nil) {
			bags = append(bags, f)
		}
	}
	return bags
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
		scale := min(fit.Scale(), s.scaleBeside(fit.Width))
		v.Camera.Zoom = s.camera.Zoom * scale / v.Scale()
	}
	if !s.several {
		v.Camera.Shift = s.camera.Shift // on a card it would bring things out of sight
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
	v.Camera.Zoom, v.Camera.Shift = 1, geometry.Vec2{}
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
// beside any of the bags, alone in a picture of that width.
func (s *stage) scaleBeside(width int) float64 {
	if s.several || s.reference == solid.NoReference {
		return math.Inf(1)
	}
	reach := 0.0
	for _, f := range s.company() {
		both := f.model.Frame(s.reference, s.side)
		reach = max(reach, both.Radius+both.Middle.Sub(f.own.Middle).Length())
	}
	const margin = 1.1 // what is near looks larger
	return float64(width) / 2 / (margin * max(reach, 1))
}
