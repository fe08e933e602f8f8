package blankpane

import (
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// Places of the default bag, from its size: see TestGripsDriveTheirEntries.
func TestSnapping(t *testing.T) {
	laid := blank.Lay(bag.Default())
	d := layOut(&laid, view{scale: 1, letter: 8})
	marks := d.marks()
	for _, c := range []struct {
		name     string
		near     geometry.Vec2
		want     geometry.Vec2
		wantKind kind
	}{
		{"panel corner", geometry.Vec2{X: 242, Y: 69}, geometry.Vec2{X: 240, Y: 70}, corner},
		{"hole", geometry.Vec2{X: 62, Y: 404}, geometry.Vec2{X: 60, Y: 405}, centre},
		{"end of the gusset crease", geometry.Vec2{X: 291, Y: 119}, geometry.Vec2{X: 290, Y: 120}, lineEnd},
		{"middle of the left edge", geometry.Vec2{X: 1, Y: 241}, geometry.Vec2{X: 0, Y: 240}, middlePoint},
		{"on the gusset crease", geometry.Vec2{X: 291, Y: 200}, geometry.Vec2{X: 290, Y: 200}, onLine},
		{"free", geometry.Vec2{X: 120, Y: 300}, geometry.Vec2{X: 120, Y: 300}, free},
	} {
		got := d.snap(marks, d.at(0, c.near), 4)
		if got.kind != c.wantKind || !got.at.Near(c.want) {
			t.Errorf("%s: %v of kind %d, want %v of kind %d", c.name, got.at, got.kind, c.want, c.wantKind)
		}
	}
}

func TestSnapToTheMiddleOfAHandHole(t *testing.T) {
	laid := blank.Lay(handHole())
	d := layOut(&laid, view{scale: 1, letter: 8})
	got := d.snap(d.marks(), d.at(0, geometry.Vec2{X: 121, Y: 384}), 4)
	if want := (geometry.Vec2{X: 120, Y: 385}); got.kind != centre || !got.at.Near(want) {
		t.Errorf("%+v, want the centre at %v", got, want)
	}
}

func TestSnapToARoundCut(t *testing.T) {
	laid := blank.Lay(handHole())
	d := layOut(&laid, view{scale: 1, letter: 8})
	// The round ends have a radius of 15 about (90, 385) and (150, 385).
	got := d.snap(d.marks(), d.at(0, geometry.Vec2{X: 163.5, Y: 385 + 1}), 4)
	if distance := got.at.Sub(geometry.Vec2{X: 150, Y: 385}).Length(); got.kind != onLine || distance < 14.999 || distance > 15.001 {
		t.Errorf("%+v, %g from the middle of the round end", got, distance)
	}
}

func TestKeysGoFromMarkToMark(t *testing.T) {
	laid := blank.Lay(bag.Default())
	d := layOut(&laid, view{scale: 1, letter: 8})
	marks := d.marks()
	at := d.at(0, geometry.Vec2{X: 0, Y: 70})
	var passed []geometry.Vec2
	for range 3 {
		m, found := d.next(marks, at, geometry.Vec2{X: 1})
		if !found {
			break
		}
		passed = append(passed, m.at)
		at = d.of(m)
	}
	last := passed[len(passed)-1]
	if len(passed) != 3 || last.Y != 70 || last.X < 240 {
		t.Errorf("going right along the base crease passes %v", passed)
	}
	if _, found := d.next(marks, d.at(0, geometry.Vec2{X: -100, Y: 100}), geometry.Vec2{X: -1}); found {
		t.Error("there is something left of everything")
	}
}

func TestRoundLengths(t *testing.T) {
	for most, want := range map[float64]float64{7: 5, 5: 5, 4.9: 2, 1.3: 1, 130: 100, 0.07: 0.05, 999: 500} {
		if got := roundLength(most); got < want*0.999999 || got > want*1.000001 {
			t.Errorf("at most %g: %g, want %g", most, got, want)
		}
	}
}
