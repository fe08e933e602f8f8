package blank_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
)

func TestArtZones(t *testing.T) {
	spec := geomtest.WorkedExample()
	laid := blank.Lay(spec)
	zones := map[string]blank.ArtZone{}
	for _, zone := range laid.Pieces[0].ArtZones(spec) {
		zones[zone.Panel] = zone
	}
	front := zones["front"]
	near(t, "front bleed area", front.Bleed.Area(), (240+6)*(360+6))
	near(t, "front safe area", front.Safe.Area(), (240-10)*(360-10))
	if len(front.KeepFree) != 0 || len(front.KeepClear) != 2 {
		t.Errorf("front: %d areas without ink and %d holes, want 0 and 2", len(front.KeepFree), len(front.KeepClear))
	}
	// The overlap of the front and back flap is twice the base overlap deep, and glue stays
	// 2 from its edges (common practice, no published source).
	base := zones["front-base"]
	if len(base.KeepFree) != 3 {
		t.Fatalf("front base flap: %d areas without ink, want both corners and the overlap", len(base.KeepFree))
	}
	near(t, "overlap depth", base.KeepFree[2].Bounds().Height(), 36)
	if len(zones["seam-flap"].Safe.Vertices) != 0 {
		t.Error("the seam flap has a safe area")
	}
}

// Every zone lies where it should on any bag: safe inside the panel, the panel
// inside its bleed.
func TestZonesNest(t *testing.T) {
	eachBag(t, func(t *testing.T, spec bag.Spec, laid blank.Blank) {
		for i := range laid.Pieces {
			piece := &laid.Pieces[i]
			for _, zone := range piece.ArtZones(spec) {
				panel, _ := piece.Panel(zone.Panel)
				if len(zone.Safe.Vertices) > 0 {
					inner := zone.Safe.Bounds()
					if !panel.Box.Contains(inner.Min) || !panel.Box.Contains(inner.Max) {
						t.Errorf("%s: safe area %v leaves the panel %v", zone.Panel, inner, panel.Box)
					}
				}
				if zone.Bleed.Area() < panel.Shape.Area()-1e-9 {
					t.Errorf("%s: bleed area smaller than the panel", zone.Panel)
				}
			}
			bleed := piece.BleedOutline(3).Bounds()
			want := piece.Box().Inset(-3)
			if math.Abs(bleed.Min.X-want.Min.X)+math.Abs(bleed.Max.Y-want.Max.Y)+math.Abs(bleed.Max.X-want.Max.X)+math.Abs(bleed.Min.Y-want.Min.Y) > 1e-6 {
				t.Errorf("bleed reaches %v, want %v", bleed, want)
			}
		}
	})
}

// The slits of the worked example stand 60 either side of the middle of each face, 25 from
// the top fold at 430, and mirrored about it: 22 high, 1.5 wide.
func TestSlits(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Handle.Kind = bag.HandleTape
	laid := blank.Lay(spec)
	piece := &laid.Pieces[0]
	cuts := piece.CutOuts()
	if len(cuts) != 8 || len(piece.Holes) != 0 {
		t.Fatalf("%d slits and %d holes, want 8 and 0", len(cuts), len(piece.Holes))
	}
	for i, want := range []geometry.Vec2{{X: 60, Y: 405}, {X: 180, Y: 405}, {X: 60, Y: 455}, {X: 180, Y: 455}, {X: 400, Y: 405}} {
		box := cuts[i].Shape.Bounds()
		if cuts[i].Role != blank.RoleSlit || !box.Center().Near(want) {
			t.Errorf("%s at %v, want a slit at %v", cuts[i].Role, box.Center(), want)
		}
		near(t, "width", box.Width(), 1.5)
		near(t, "height", box.Height(), 22)
		near(t, "area", cuts[i].Shape.Area(), 20.5*1.5+math.Pi*0.75*0.75)
	}
	for _, zone := range piece.ArtZones(spec) {
		if zone.Panel != "front" {
			continue
		}
		if len(zone.KeepClear) != 2 {
			t.Fatalf("%d places for text to keep off, want 2", len(zone.KeepClear))
		}
		near(t, "height to keep clear", zone.KeepClear[0].Bounds().Height(), 22+2*spec.Print.Safe)
		near(t, "width to keep clear", zone.KeepClear[0].Bounds().Width(), 1.5+2*spec.Print.Safe)
	}
	spec.Body.TurnIn = 35 // the slits reach down to 25 + 11
	laid = blank.Lay(spec)
	if cuts := laid.Pieces[0].CutOuts(); len(cuts) != 4 {
		t.Errorf("%d slits where the turn-in is too short for them, want 4", len(cuts))
	}
}

func TestHandHole(t *testing.T) {
	hole := blank.HandHole(geometry.Vec2{X: 10, Y: 20}, 90, 30)
	near(t, "area", hole.Area(), 60*30+math.Pi*15*15)
	near(t, "length of the cut", hole.Length(), 120+2*math.Pi*15)
	near(t, "width", hole.Bounds().Width(), 90)
}
