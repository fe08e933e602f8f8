package fold_test

import (
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/fold"
)

func BenchmarkFold(b *testing.B) {
	laid := lay(b, bag.Default())
	b.ReportAllocs()
	for b.Loop() {
		fold.Fold(laid)
	}
}

func BenchmarkPose(b *testing.B) {
	l := fold.Fold(lay(b, bag.Default()))
	for i := range l.Stages {
		b.Run(l.Stages[i].Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				l.Pose(i, 0.37)
			}
		})
	}
}

func BenchmarkCrossing(b *testing.B) {
	l := fold.Fold(lay(b, bag.Default()))
	body := l.Pose(l.Standing, 0.5)
	var gauge fold.Gauge
	for b.Loop() {
		gauge.Crossing(&body)
	}
}

func BenchmarkPackedSize(b *testing.B) {
	laid := lay(b, bag.Default())
	for b.Loop() {
		fold.PackedSize(laid)
	}
}
