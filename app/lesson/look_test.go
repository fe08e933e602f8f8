package lesson

import (
	"image"
	"image/color"
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2/theme"

	"gussetwright/app/creases"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/render/solid"
)

// Stages that have a view of their own are seen from there until the user turns the bag;
// then all are seen from where the user looks, until that is let go.
func TestStagesAreSeenFromWhereTheyAreSeenBest(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700).blind()
	b.at(b.stageOf(t, "tube"), 1)
	if got := b.bag.seen(); got.Azimuth != solid.Isometric.Azimuth || got.Elevation != solid.Isometric.Elevation {
		t.Errorf("the tube is seen from %+v", got)
	}
	for _, name := range []string{"base-gussets", "base-front", "base-back"} {
		if b.at(b.stageOf(t, name), 1); b.bag.seen().Elevation < 0.9 || b.bag.views.Text != "View of the step" {
			t.Errorf("%s is seen from %+v, the button says %q", name, b.bag.seen(), b.bag.views.Text)
		}
	}
	b.bag.turn(solid.Below)
	if b.at(b.stageOf(t, "base-front"), 0.5); b.bag.seen().Elevation != solid.Below.Elevation || b.bag.views.Text != "From below" {
		t.Errorf("turned it is seen from %+v, the button says %q", b.bag.seen(), b.bag.views.Text)
	}
	if b.bag.letGo(); b.bag.seen().Elevation < 0.9 {
		t.Errorf("let go it is seen from %+v", b.bag.seen())
	}
}

// Where a stage has come to its end the paper fills a good part of the picture.
func TestTheBagFillsThePicture(t *testing.T) {
	const width, height, least = 300, 220, 0.55
	for name, spec := range lessons(t) {
		course := newCourse(derived(t, spec))
		f := newFolder()
		var renderer solid.Renderer
		for stage := range course.Stages {
			at := place{stage, 1}
			o := order{course: course, at: at, width: width, height: height, samples: draft, camera: course.camera(at), look: solid.LightLook()}
			o.look.Shadow = 0
			o.look.Above, o.look.Below = color.RGBA{255, 0, 255, 255}, color.RGBA{255, 0, 255, 255}
			var seen image.Rectangle
			picture := renderer.Draw(f.view(&o))
			for y := range height {
				for x := range width {
					if picture.RGBAAt(x, y) != o.look.Above {
						seen = seen.Union(image.Rect(x, y, x+1, y+1))
					}
				}
			}
			if filled := max(float64(seen.Dx())/width, float64(seen.Dy())/height); filled < least {
				t.Errorf("%s, %s: what is seen takes %v of %d × %d", name, course.Stages[stage].Name, seen, width, height)
			}
		}
	}
}

// The light on the paper does not jump from one place to the next, of which there are 94 to
// a stage as on a slider of usual width. Where a stage begins or ends and the paper has not
// gone a fiftieth of its way, the mean brightness of what is seen changes by less than 1 %,
// the least difference of large areas that people see (Weber's law, with a value from
// memory). Amid a motion, where faces come into sight and turn to the light, it changes by
// less than 4 %, half of what was seen as flicker. Glue and lit creases, which come with
// their stage, are left out, and so is the stage in which cards come into the picture.
func TestTheLightDoesNotJump(t *testing.T) {
	const places, atRest, amid = 94, 0.01, 0.04
	for _, name := range []string{"block", "pinch"} {
		course := newCourse(derived(t, lessons(t)[name]))
		f := newFolder()
		var renderer solid.Renderer
		last, hidden := 0.0, 0
		for stage := range course.Stages[:course.Standing+1] {
			if course.Stages[stage].Name == "top-cards" {
				continue
			}
			for i := range places + 1 {
				at := place{stage, float64(i) / places}
				o := order{course: course, at: at, width: 160, height: 120, samples: draft, camera: course.camera(at), look: solid.LightLook()}
				o.look.Shadow = 0
				o.look.Above, o.look.Below = color.RGBA{255, 0, 255, 255}, color.RGBA{255, 0, 255, 255}
				view := f.view(&o)
				view.Creases, view.Patches = nil, nil
				mean, count := brightness(renderer.Draw(view), o.look.Above)
				most := amid
				if moment := at.moment(); min(moment, 1-moment) < 0.02 {
					most = atRest
				}
				if change := math.Abs(mean/last - 1); last > 0 && change > most {
					t.Errorf("%s, %s at %d of %d: from %.1f to %.1f", name, course.Stages[stage].Name, i, places, last, mean)
				}
				if last = mean; count < 1000 {
					hidden++
				}
			}
		}
		if hidden > 0 {
			t.Errorf("%s: %d places show next to nothing", name, hidden)
		}
	}
}

// brightness returns the mean of the green of all pixels that are not of the ground.
func brightness(picture *image.RGBA, ground color.RGBA) (mean float64, count int) {
	size := picture.Rect.Size()
	for y := range size.Y {
		for x := range size.X {
			if c := picture.RGBAAt(x, y); c != ground {
				mean, count = mean+float64(c.G), count+1
			}
		}
	}
	return mean / float64(max(count, 1)), count
}

// From the reverse a blank is the same with left and right exchanged: it has the same area,
// its outline still runs with the paper on its left, mountains are valleys, and seen from
// there once more it is as before.
func TestFromTheReverse(t *testing.T) {
	for name, spec := range lessons(t) {
		spec.Handle.Kind = bag.HandleHandHole
		if spec.Validate() != nil {
			continue
		}
		laid := blank.Lay(spec)
		turned := fromTheReverse(&laid)
		back := fromTheReverse(turned)
		for i := range laid.Pieces {
			piece, over, again := &laid.Pieces[i], &turned.Pieces[i], &back.Pieces[i]
			if math.Abs(piece.Outline.Area()-over.Outline.Area()) > 1e-6 || over.Outline.Area() <= 0 {
				t.Errorf("%s: the outline has %g mm², from the reverse %g", name, piece.Outline.Area(), over.Outline.Area())
			}
			for k, line := range piece.Lines {
				if over.Lines[k].Fold != line.Fold.Opposite() || math.Abs(over.Lines[k].From.X-(piece.Width-line.From.X)) > 1e-9 || over.Lines[k].Bulge != -line.Bulge {
					t.Fatalf("%s: line %+v is %+v from the reverse", name, line, over.Lines[k])
				}
				if again.Lines[k].From.Sub(line.From).Length() > 1e-9 || again.Lines[k].Fold != line.Fold {
					t.Fatalf("%s: line %+v came back as %+v", name, line, again.Lines[k])
				}
			}
			for k := range piece.Panels {
				if !over.Panels[k].Box.Contains(overleaf{piece.Width}.point(piece.Panels[k].Box.Center())) {
					t.Errorf("%s: %s is not where it was", name, piece.Panels[k].ID)
				}
			}
			if holes := over.CutOuts(); len(holes) != len(piece.CutOuts()) || len(holes) > 0 && math.Abs(math.Abs(holes[0].Shape.Area())-piece.CutOuts()[0].Shape.Area()) > 1e-6 {
				t.Errorf("%s: cut out are %v, from the reverse %v", name, piece.CutOuts(), holes)
			}
		}
	}
	c := overleaf{100}.crease(fold.Crease{Edge: geometry.Edge{From: geometry.Vec2{X: 10}, To: geometry.Vec2{X: 10, Y: 5}}, Fold: blank.Valley})
	if c.From.X != 90 || c.Fold != blank.Mountain {
		t.Errorf("a crease from the reverse: %+v", c)
	}
}

// The side of the blank follows the hands, unless the user has chosen one; a label says
// which it is, and the legend calls creases what they are seen from there.
func TestTheSideThatIsSeen(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	see := func(stage, want string, reverse bool) {
		t.Helper()
		b.at(b.stageOf(t, stage), 0.5)
		if b.flat.side.Text != want || b.flat.last.reverse != reverse {
			t.Errorf("%s: the label says %q, drawn from the reverse %v", stage, b.flat.side.Text, b.flat.last.reverse)
		}
	}
	see("turn-in", "Reverse up, as in the step", true)
	if has := b.course.marksOf(b.player.at.stage, true); !has[valley] || has[mountain] {
		t.Errorf("the top fold, a mountain of the print side, has the marks %v from the reverse", has)
	}
	see("base-front", "Print side up, as in the step", false)
	b.flat.choose(printUp)
	see("turn-in", "Print side up, as chosen", false)
	b.flat.choose(reverseUp)
	see("base-front", "Reverse up, as chosen", true)
	b.flat.choose(asHandsHoldIt)
	see("base-front", "Print side up, as in the step", false)
}

// The folds of a stage have the same names here as in the printed lesson.
func TestFoldsAreNamedAsInThePrintedLesson(t *testing.T) {
	for name, spec := range lessons(t) {
		course := newCourse(derived(t, spec))
		for stage := range course.Stages {
			var printed [marks]bool
			for _, run := range creases.Runs(creases.Seen(&course.Stages[stage])) {
				printed[mountain] = printed[mountain] || creases.Fold(run.Fold) == "mountain"
				printed[valley] = printed[valley] || creases.Fold(run.Fold) == "valley"
			}
			shown := course.marksOf(stage, course.liesOnPrint(stage))
			if shown[mountain] != printed[mountain] || shown[valley] != printed[valley] {
				t.Errorf("%s, %s: shown are %v, printed %v", name, course.Stages[stage].Name, shown, printed)
			}
		}
	}
}

// A key turns the blank over, and with it back the side follows the stages again. In another
// stage it always shows the other side.
func TestTheBlankIsTurnedOverByKey(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700).blind()
	turn := func(letter, want string, side upside) {
		t.Helper()
		before := b.flat.next().reverse
		if b.typed(letter); b.flat.chosen != side || b.flat.next().reverse == before || b.flat.side.Text != want {
			t.Errorf("turned over it is %v, from the reverse %v, was %v; the button says %q, want %q",
				b.flat.chosen, b.flat.next().reverse, before, b.flat.side.Text, want)
		}
	}
	b.at(b.stageOf(t, "base-front"), 0.5)
	turn("t", "Reverse up, as chosen", reverseUp)
	turn("T", "Print side up, as in the step", asHandsHoldIt)
	b.at(b.stageOf(t, "turn-in"), 0.5)
	turn("t", "Print side up, as chosen", printUp)
	b.at(b.stageOf(t, "base-front"), 0.5)
	turn("t", "Reverse up, as chosen", reverseUp)
	turn("t", "Print side up, as in the step", asHandsHoldIt)
}

// The buttons over the blank do not lie on each other, however large the text is.
func TestButtonsOverTheBlankStandApart(t *testing.T) {
	spec := furnished()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("roof.svg", bag.OnFaces)}
	for _, scale := range []float64{1, 1.5, 2} {
		b := newBench(t, spec, 1024, 700, func(s *settings.Settings) { s.SetTextScale(scale) }).blind()
		for _, side := range []upside{asHandsHoldIt, printUp, reverseUp} {
			b.flat.choose(side)
			if end := b.flat.side.Position().X + b.flat.side.Size().Width; end > b.flat.art.Position().X || b.flat.side.Size().Width < b.flat.side.MinSize().Width {
				t.Errorf("text %g: %q ends at %.0f, artwork begins at %.0f", scale, b.flat.side.Text, end, b.flat.art.Position().X)
			}
		}
	}
}

// Without artwork both panes show plain paper; where there is none there is no switch.
func TestWithoutArtwork(t *testing.T) {
	spec := furnished()
	if b := newBench(t, spec, 1024, 700); b.flat.art.Visible() {
		t.Error("there is no artwork to leave out")
	}
	spec.Artwork = []bag.Artwork{bag.NewArtwork("roof.svg", bag.OnFaces)}
	b := newBench(t, spec, 1024, 700)
	b.at(b.stageOf(t, "base-front"), 0.5)
	if !b.flat.art.Visible() || b.flat.art.Icon != theme.CheckButtonCheckedIcon() {
		t.Error("the artwork is not shown first")
	}
	bare := func() (orders []bool) {
		flat, folded := b.flat.next(), b.order()
		return []bool{flat.bare, folded.bare, len(flat.shown().Spec.Artwork) == 0}
	}
	if b.typed("a"); slices.Contains(bare(), false) || b.flat.art.Icon != theme.CheckButtonIcon() {
		t.Errorf("without artwork: %v", bare())
	}
	if b.flat.art.Tapped(nil); slices.Contains(bare(), true) {
		t.Errorf("with it again: %v", bare())
	}
}
