package packing_test

import (
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/packing"
)

// The lesson ends as the packed bag does, begins its last stage where the standing bag
// was, and says that it is reckoned.
func TestLessonPacksByTheMotion(t *testing.T) {
	laid := blank.Lay(bag.Default())
	lesson := packing.Lesson(&laid)
	last := len(lesson.Stages) - 1
	if lesson.Stages[last].Schematic {
		t.Error("the packing is still called a sketch")
	}
	near := func(what string, a, b fold.Body) {
		least, most := a.Bounds()
		otherLeast, otherMost := b.Bounds()
		for _, d := range []geometry.Vec3{least.Sub(otherLeast), most.Sub(otherMost)} {
			if d.Length() > 2 {
				t.Errorf("%s: bounds %v to %v and %v to %v", what, least, most, otherLeast, otherMost)
			}
		}
	}
	paper := func(b fold.Body) fold.Body { b.Cards, b.Cords = nil, nil; return b }
	near("packed", paper(lesson.Pose(last, 1)), paper(fold.Packed(&laid)))
	near("standing", paper(lesson.Pose(last, 0)), paper(fold.Standing(&laid)))
}

// A bag that is packed by folding alone, or not at all, keeps the lesson of package fold.
func TestLessonWithoutMotion(t *testing.T) {
	pinch := bag.Default()
	pinch.Body.Base = bag.BasePinch
	low := bag.Default()
	low.Body.Height, low.Body.Gusset = 90, 100
	for name, spec := range map[string]bag.Spec{"pinch": pinch, "low": low} {
		laid := blank.Lay(spec)
		lesson, plain := packing.Lesson(&laid), fold.Fold(&laid)
		last := len(lesson.Stages) - 1
		if lesson.Foldable != plain.Foldable || lesson.Stages[last].Schematic != plain.Stages[last].Schematic {
			t.Errorf("%s: %d of the stages can be folded, want %d; sketch %t", name, lesson.Foldable, plain.Foldable, lesson.Stages[last].Schematic)
		}
	}
}

func BenchmarkLesson(b *testing.B) {
	laid := blank.Lay(bag.Default())
	for b.Loop() {
		packing.Lesson(&laid)
	}
}
