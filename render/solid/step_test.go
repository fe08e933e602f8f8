package solid_test

import (
	"image/color"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

// poseOf returns a view straight down onto a moment of a stage.
func poseOf(t *testing.T, stage string, moment float64) solid.View {
	t.Helper()
	laid := blank.Lay(geomtest.WorkedExample())
	lesson := fold.Fold(&laid)
	for i := range lesson.Stages {
		if lesson.Stages[i].Name == stage {
			return solid.View{
				Width: 500, Height: 500, Samples: 1, Camera: solid.Top, Look: solid.LightLook(),
				Paper: solid.PaperOf(laid.Spec.Paper), Model: solid.NewModel(lesson.Pose(i, moment)),
			}
		}
	}
	t.Fatalf("there is no stage %s", stage)
	return solid.View{}
}

// On a closed base a shade tells where one flap lies on another; it darkens some of the
// paper below the edges and nothing else. On a flat sheet, where nothing lies on anything,
// there is none.
func TestStepsShadeWhatLiesBelow(t *testing.T) {
	for _, c := range []struct {
		stage       string
		moment      float64
		least, most int // pixels of 250 000
	}{{"base-back", 1, 1500, 20_000}, {"blank", 0, 0, 0}} {
		v := poseOf(t, c.stage, c.moment)
		var renderer solid.Renderer
		plain := renderer.Draw(v)
		v.Steps = true
		stepped := renderer.Draw(v)
		darker := 0
		for i := 0; i < len(plain.Pix); i += 4 {
			switch was, is := plain.Pix[i+1], stepped.Pix[i+1]; {
			case is > was:
				t.Fatalf("%s: pixel %d became lighter", c.stage, i/4)
			case is < was:
				darker++
			}
		}
		if darker < c.least || darker > c.most {
			t.Errorf("%s: %d pixels are darker, want %d to %d", c.stage, darker, c.least, c.most)
		}
	}
}

// A sheet that lies flat has the light of paper in the open, on both sides, wherever it
// lies and however long it is; it is no darker than the upper edge of the standing bag.
func TestFlatPaperIsLight(t *testing.T) {
	v := poseOf(t, "blank", 0)
	var renderer solid.Renderer
	picture := renderer.Draw(v)
	if c := picture.RGBAAt(250, 250); c.G < 235 {
		t.Errorf("the middle of the flat blank is %v", c)
	}
}

// Stripes of a patch keep off its openings.
func TestPatchesHaveOpenings(t *testing.T) {
	v := poseOf(t, "blank", 0)
	square := func(x, y, size float64) []geometry.Vec2 {
		return []geometry.Vec2{{X: x, Y: y}, {X: x + size, Y: y}, {X: x + size, Y: y + size}, {X: x, Y: y + size}}
	}
	laid := blank.Lay(geomtest.WorkedExample())
	front, _ := laid.Pieces[0].Panel("front")
	at := front.Box.Min
	patch := solid.Patch{Panel: "front", Reverse: true, Shape: square(at.X+20, at.Y+20, 150), Colour: color.RGBA{200, 0, 0, 255}, Strength: 1}
	count := func() (red int) {
		v.Patches = []solid.Patch{patch}
		var renderer solid.Renderer
		picture := renderer.Draw(v)
		for i := 0; i < len(picture.Pix); i += 4 {
			if int(picture.Pix[i]) > int(picture.Pix[i+1])+40 {
				red++
			}
		}
		return red
	}
	whole := count()
	patch.Openings = [][]geometry.Vec2{square(at.X+60, at.Y+60, 75), square(at.X+150, at.Y+150, 80)} // the second reaches beyond
	want := 1 - 75.0*75/(150*150) - 20.0*20/(150*150)
	if got := float64(count()) / float64(whole); whole < 1000 || got < want-0.02 || got > want+0.02 {
		t.Errorf("%.3f of %d pixels are left, want %.3f", got, whole, want)
	}
}

// What a box takes up of the picture is where its corners are drawn.
func TestSpan(t *testing.T) {
	v := poseOf(t, "blank", 0)
	least, greatest := geometry.Vec3{X: -50, Y: -30}, geometry.Vec3{X: 150, Y: 60}
	span := v.Span(least, greatest)
	if wide, high := span.Width()/200, span.Height()/90; wide < 0.97 || wide > 1.03 || high < 0.97 || high > 1.03 {
		t.Errorf("from above 200 × 90 mm take %.1f × %.1f", span.Width(), span.Height())
	}
}
