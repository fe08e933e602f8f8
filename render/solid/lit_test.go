package solid_test

import (
	"image/color"
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

// creasesOf returns the creases of a role.
func creasesOf(laid *blank.Blank, role blank.Role, lit bool) []solid.Crease {
	var list []solid.Crease
	for i := range laid.Pieces {
		for _, line := range laid.Pieces[i].Lines {
			if line.Role == role {
				list = append(list, solid.Crease{Piece: i, Edge: line.Edge, Lit: lit})
			}
		}
	}
	return list
}

// away is how far a place lies from the nearest crease, in mm.
func away(creases []solid.Crease, p solid.Place) float64 {
	nearest := math.Inf(1)
	for _, c := range creases {
		along := c.To.Sub(c.From)
		share := min(max(p.At.Sub(c.From).Dot(along)/along.Dot(along), 0), 1)
		if c.Piece == p.Piece {
			nearest = min(nearest, p.At.Sub(c.From.Add(along.Scale(share))).Length())
		}
	}
	return nearest
}

// The flat-fold crease across the front of the standing bag, where no facet ends, and
// the same seen from the inside: what is lit is what lies on the crease, pixel by pixel
// as Pick tells.
func TestCreaseIsLitWhereItLies(t *testing.T) {
	laid := blank.Lay(geomtest.WorkedExample())
	creases := creasesOf(&laid, blank.RoleFlatFold, true)
	v := solid.View{Width: 300, Height: 400, Camera: solid.Front, Look: solid.LightLook(), Model: solid.NewModel(fold.Standing(&laid))}
	var r, second solid.Renderer
	plain := r.Draw(v)
	v.Creases = creases
	lit := second.Draw(v)
	mm := 1 / v.Scale()
	seen := 0
	for y := range v.Height {
		for x := range v.Width {
			hit, found := v.Pick(float64(x)+0.5, float64(y)+0.5)
			distance := math.Inf(1)
			if found {
				distance = away(creases, hit.Place)
			}
			got := lit.RGBAAt(x, y)
			switch {
			case distance < 1.2*mm && hit.Panel == "front":
				if seen++; got != v.Look.Accent {
					t.Fatalf("at %d, %d, %.2f mm from the crease, the picture is %v", x, y, distance, got)
				}
			case distance > 5*mm && got != plain.RGBAAt(x, y) && hit.Panel == "front" && distance < 40*mm:
				t.Fatalf("at %d, %d, %.2f mm from the crease, the picture changed", x, y, distance)
			}
		}
	}
	if seen < 400 {
		t.Errorf("the crease is seen on %d pixels", seen)
	}
}

// A lit crease behind paper shows dashed: some of the way, and less of it than in sight.
// A fine crease behind paper does not show.
func TestHiddenCreaseIsDashed(t *testing.T) {
	laid := blank.Lay(geomtest.WorkedExample())
	v := solid.View{Width: 300, Height: 400, Camera: solid.Back, Look: solid.LightLook(), Model: solid.NewModel(fold.Standing(&laid))}
	changed := func(creases []solid.Crease) (pixels int) {
		var r, second solid.Renderer
		plain := r.Draw(v)
		w := v
		w.Creases = creases
		with := second.Draw(w)
		for i := 0; i < len(plain.Pix); i += 4 {
			if [3]uint8(plain.Pix[i:i+3]) != [3]uint8(with.Pix[i:i+3]) {
				pixels++
			}
		}
		return pixels
	}
	// The front's part of the flat-fold crease, on the far side.
	front, _ := laid.Pieces[0].Panel("front")
	level := laid.Pieces[0].Levels.FlatFold
	edge := geometry.Edge{From: geometry.Vec2{X: front.Box.Min.X + 5, Y: level}, To: geometry.Vec2{X: front.Box.Max.X - 5, Y: level}}
	hidden := changed([]solid.Crease{{Edge: edge, Lit: true}})
	fine := changed([]solid.Crease{{Edge: edge}})
	v.Camera = solid.Front
	whole := changed([]solid.Crease{{Edge: edge, Lit: true}})
	if hidden == 0 || hidden > whole/3 || fine != 0 {
		t.Errorf("%d pixels from the front, %d from behind, %d of them fine", whole, hidden, fine)
	}
}

// What is drawn on a side of a panel is seen on that side of it alone.
func TestPatchCoversItsSide(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Handle.Kind = bag.HandleNone // Pick looks past handles
	laid := blank.Lay(spec)
	front, _ := laid.Pieces[0].Panel("front")
	box := front.Box.Inset(40)
	shape := []geometry.Vec2{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}}
	for name, camera := range map[string]solid.Camera{"front": solid.Front, "into the bag from behind": {Azimuth: math.Pi, Elevation: 1, Zoom: 1}} {
		for _, reverse := range []bool{false, true} {
			v := solid.View{Width: 300, Height: 300, Camera: camera, Look: solid.LightLook(), Model: solid.NewModel(fold.Standing(&laid))}
			var r, second solid.Renderer
			plain := r.Draw(v)
			v.Patches = []solid.Patch{{Panel: "front", Reverse: reverse, Shape: shape, Colour: color.RGBA{200, 0, 0, 255}, Strength: 1}}
			with := second.Draw(v)
			inside := 0
			for y := range v.Height {
				for x := range v.Width {
					hit, found := v.Pick(float64(x)+0.5, float64(y)+0.5)
					on := found && hit.Panel == "front" && hit.Reverse == reverse && box.Inset(2).Contains(hit.Place.At)
					off := !found || hit.Panel != "front" || hit.Reverse != reverse || !box.Inset(-2).Contains(hit.Place.At)
					differs := with.RGBAAt(x, y) != plain.RGBAAt(x, y)
					if on {
						inside++
					}
					if on && !differs || off && differs {
						t.Fatalf("%s, reverse %v: at %d, %d on %q the picture differs: %v", name, reverse, x, y, hit.Panel, differs)
					}
				}
			}
			if wanted := (name == "front") != reverse; wanted != (inside > 500) {
				t.Errorf("%s, reverse %v: %d pixels of the patch are seen", name, reverse, inside)
			}
		}
	}
}

// A model that is folded again is drawn as a new one is, whatever it was before.
func TestRefold(t *testing.T) {
	model := &solid.Model{}
	var kept solid.Renderer
	for _, name := range names(styles(t)) {
		laid := blank.Lay(styles(t)[name])
		lesson := fold.Fold(&laid)
		for stage := range lesson.Stages {
			body := lesson.Pose(stage, 0.6)
			model.Refold(body)
			v := solid.View{Width: 160, Height: 140, Samples: 2, Camera: solid.Isometric, Look: solid.LightLook(), Model: model}
			got := kept.Draw(v)
			var r solid.Renderer
			v.Model = solid.NewModel(lesson.Pose(stage, 0.6))
			if want := r.Draw(v); string(got.Pix) != string(want.Pix) {
				t.Fatalf("%s, stage %s: the pictures differ", name, lesson.Stages[stage].Name)
			}
			kept.Recycle(got)
		}
	}
}

// At the closest zoom the box fits, and touches the edge of the picture's inner part.
func TestClosest(t *testing.T) {
	// A rectangle of paper on the ground fills its box.
	pose := fold.Pose{Right: geometry.Vec3{X: 1}, Up: geometry.Vec3{Y: 1}}
	facet := fold.Facet{Panel: "front", Pose: pose, Corners: []geometry.Vec2{{}, {X: 700}, {X: 700, Y: 480}, {Y: 480}}}
	for _, corner := range facet.Corners {
		facet.Points = append(facet.Points, pose.At(corner))
	}
	body := fold.Body{Facets: []fold.Facet{facet}, Caliper: 0.2}
	least, greatest := body.Bounds()
	for name, camera := range map[string]solid.Camera{"top": solid.Top, "isometric": solid.Isometric, "front": {Elevation: 0.3, Zoom: 3, Shift: geometry.Vec2{X: 0.2}}} {
		v := solid.View{Width: 400, Height: 300, Camera: camera, Look: solid.LightLook(), Model: solid.NewModel(body)}
		v.Look.Shadow = 0
		v.Camera.Zoom, v.Camera.Shift = v.Closest(least, greatest), geometry.Vec2{}
		x0, y0, x1, y1 := v.Width, v.Height, 0, 0
		for y := range v.Height {
			for x := range v.Width {
				if _, found := v.Pick(float64(x)+0.5, float64(y)+0.5); found {
					x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x+1), max(y1, y+1)
				}
			}
		}
		margin := min(float64(min(x0, v.Width-x1))/float64(v.Width), float64(min(y0, v.Height-y1))/float64(v.Height))
		if math.Abs(margin-0.025) > 0.012 {
			t.Errorf("%s: the paper reaches from %d, %d to %d, %d", name, x0, y0, x1, y1)
		}
	}
}

// However a bag is folded, nothing is drawn for a crease off the paper.
func TestCreasesStayOnThePaper(t *testing.T) {
	for _, name := range names(styles(t)) {
		laid := blank.Lay(styles(t)[name])
		lesson := fold.Fold(&laid)
		for stage := range lesson.Stages {
			v := solid.View{Width: 160, Height: 140, Camera: solid.Camera{Azimuth: 0.4, Elevation: 0.5, Zoom: 0.8}, Look: solid.LightLook(), Model: solid.NewModel(lesson.Pose(stage, 0.6))}
			v.Look.Shadow = 0
			var r, second solid.Renderer
			plain := r.Draw(v)
			for _, line := range laid.Pieces[0].Lines {
				if line.Kind == blank.Crease {
					v.Creases = append(v.Creases, solid.Crease{Edge: line.Edge, Lit: true})
				}
			}
			with := second.Draw(v)
			paper := func(x, y int) bool {
				const reach = 5 // half of what a lit crease is wide, and a bit
				for dy := -reach; dy <= reach; dy++ {
					for dx := -reach; dx <= reach; dx++ {
						if _, found := v.Pick(float64(x+dx)+0.5, float64(y+dy)+0.5); found {
							return true
						}
					}
				}
				return false
			}
			for y := range v.Height {
				for x := range v.Width {
					if with.RGBAAt(x, y) != plain.RGBAAt(x, y) && !paper(x, y) {
						t.Fatalf("%s, stage %s: something is drawn at %d, %d beside the paper", name, lesson.Stages[stage].Name, x, y)
					}
				}
			}
		}
	}
}
