package blankpane

import (
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

func TestZoomKeepsThePointUnderThePointer(t *testing.T) {
	for name, spec := range map[string]bag.Spec{"one piece": bag.Default(), "two pieces": twoSeams()} {
		laid := blank.Lay(spec)
		v := view{letter: 12}.fitted(&laid, 900, 700)
		for _, pixel := range []geometry.Vec2{{X: 10, Y: 20}, {X: 300, Y: 350}, {X: 640, Y: 350}, {X: 890, Y: 10}} {
			piece, at := layOut(&laid, v).nearest(v.desk(pixel))
			for _, factor := range []float64{1.2, 0.5, 7} {
				zoomed := v.zoomed(&laid, pixel, v.scale*factor)
				on := layOut(&laid, zoomed).at(piece, at)
				if got := zoomed.screen(on); got.Sub(pixel).Length() > 1e-6 {
					t.Errorf("%s: %v of piece %d went from pixel %v to %v", name, at, piece, pixel, got)
				}
				if math.Abs(zoomed.scale-v.scale*factor) > 1e-9 {
					t.Errorf("%s: scale %g, want %g", name, zoomed.scale, v.scale*factor)
				}
			}
		}
	}
}

func TestZoomIsBounded(t *testing.T) {
	laid := blank.Lay(bag.Default())
	v := view{letter: 12, scale: 1}
	if got := v.zoomed(&laid, geometry.Vec2{}, 1e9).scale; got != mostScale {
		t.Errorf("scale %g", got)
	}
	if got := v.zoomed(&laid, geometry.Vec2{}, 0).scale; got != leastScale {
		t.Errorf("scale %g", got)
	}
}

func TestFitShowsEverythingAndNoSmallerThanNeeded(t *testing.T) {
	for _, spec := range []bag.Spec{bag.Default(), twoSeams(), sized(60, 30, 80), sized(600, 250, 700)} {
		laid := blank.Lay(spec)
		for _, size := range [][2]float64{{600, 400}, {900, 640}, {1600, 930}, {300, 800}} {
			v := view{letter: 12}.fitted(&laid, size[0], size[1])
			media := layOut(&laid, v).media
			low, high := v.screen(geometry.Vec2{X: media.Min.X, Y: media.Max.Y}), v.screen(geometry.Vec2{X: media.Max.X, Y: media.Min.Y})
			if low.X < -1e-3 || low.Y < -1e-3 || high.X > size[0]+1e-3 || high.Y > size[1]+1e-3 {
				t.Errorf("%v × %v × %v in %v: reaches from %v to %v", spec.Body.Width, spec.Body.Gusset, spec.Body.Height, size, low, high)
			}
			if slack := min(size[0]-(high.X-low.X), size[1]-(high.Y-low.Y)); slack > 0.5 {
				t.Errorf("%v in %v: %g pixels are left on both sides", spec.Body.Width, size, slack)
			}
		}
	}
}

func TestPanels(t *testing.T) {
	laid := blank.Lay(twoSeams())
	d := layOut(&laid, view{scale: 1, letter: 10})
	for _, c := range []struct {
		piece int
		at    geometry.Vec2
		want  string
	}{
		{0, geometry.Vec2{X: 100, Y: 200}, "front"},
		{0, geometry.Vec2{X: 100, Y: 20}, "front-base"},
		{0, geometry.Vec2{X: 450, Y: 460}, "gusset-right-turn-in"},
		{1, geometry.Vec2{X: 100, Y: 200}, "back"},
		{1, geometry.Vec2{X: 450, Y: 200}, "gusset-left"},
		{0, geometry.Vec2{X: -20, Y: 200}, ""},
	} {
		if got := d.panel(d.at(c.piece, c.at)); got != c.want {
			t.Errorf("piece %d at %v: %q, want %q", c.piece, c.at, got, c.want)
		}
	}
}

// The base crease of both pieces stays at the height 0 of the desk.
func TestBaseCreaseIsTheGround(t *testing.T) {
	for _, spec := range []bag.Spec{bag.Default(), twoSeams()} {
		laid := blank.Lay(spec)
		d := layOut(&laid, view{scale: 1, letter: 10})
		for i, piece := range laid.Pieces {
			if got := d.at(i, geometry.Vec2{Y: piece.Levels.Base}).Y; math.Abs(got) > 1e-9 {
				t.Errorf("piece %d: base crease at %g", i, got)
			}
		}
	}
}

// In a small pane the blank is seen without the dimensions round it, and large.
func TestSmallPaneShowsTheBlankAlone(t *testing.T) {
	laid := blank.Lay(bag.Default())
	for _, c := range []struct {
		width, height float64
		plain         bool
	}{{900, 700, false}, {270, 440, true}, {900, 190, true}} {
		v := view{letter: 12}.fitted(&laid, c.width, c.height)
		if v.plain != c.plain {
			t.Errorf("%g × %g: without dimensions is %v, want %v", c.width, c.height, v.plain, c.plain)
		}
		share := max(laid.Pieces[0].Width*v.scale/c.width, laid.Pieces[0].Height*v.scale/c.height)
		if share < 0.6 {
			t.Errorf("%g × %g: the blank takes %.0f %% of the pane", c.width, c.height, 100*share)
		}
	}
}
