package lesson

import (
	"testing"

	"gussetwright/app/foldedpane"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

// furnished is the worked example with everything that a lesson can have.
func furnished() bag.Spec {
	spec := geomtest.WorkedExample()
	spec.Cards.Top, spec.Cards.Base = true, true
	return spec
}

// BenchmarkFrame is one picture of the motion at 900 × 900: pose, model and draft, as
// the stage is played. It tells what is left for the garbage collector.
func BenchmarkFrame(b *testing.B) {
	course := newCourse(derived(b, furnished()))
	for _, name := range []string{"turn-in", "tube", "base-gussets", "handle", "packed"} {
		b.Run(name, func(b *testing.B) {
			f, stage := newFolder(), stageNamed(b, course, name)
			o := order{course: course, width: 900, height: 900, samples: draft, camera: solid.Isometric, look: foldedpane.Look()}
			f.giveBack(f.paint(o)) // paper and frames are there from the first picture on
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				o.at = place{stage, float64(i%180) / 180}
				f.giveBack(f.paint(o))
			}
		})
	}
}

// BenchmarkSheet is one picture of the blank, as glue comes onto it.
func BenchmarkSheet(b *testing.B) {
	course := newCourse(derived(b, furnished()))
	s, stage := newSheet(), stageNamed(b, course, "base-back")
	o := order{course: course, width: 900, height: 900, density: 1, letter: 12, look: foldedpane.Look()}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		o.at = place{stage, float64(i%6) / 20}
		s.giveBack(s.paint(o))
	}
}

// BenchmarkCourse is what a change of the bag costs the window, and what it costs the
// first picture.
func BenchmarkCourse(b *testing.B) {
	snapshot := derived(b, furnished())
	b.Run("lesson", func(b *testing.B) {
		for b.Loop() {
			newCourse(snapshot)
		}
	})
	b.Run("frames", func(b *testing.B) {
		for b.Loop() {
			newCourse(snapshot).box(place{})
		}
	})
}

// BenchmarkPose is what the pose alone takes of a frame.
func BenchmarkPose(b *testing.B) {
	laid := blank.Lay(furnished())
	lesson := fold.Fold(&laid)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		lesson.Pose(i%len(lesson.Stages), 0.4)
	}
}
