package fold_test

import (
	"fmt"
	"testing"

	"gussetwright/geometry/fold"
)

func TestPack(t *testing.T) {
	for name, spec := range styles() {
		laid := lay(t, spec)
		l := fold.Fold(laid)
		last := len(l.Stages)-1
		fmt.Println(name, l.Measure(last, 100))
		for _, m := range []float64{0, 0.01, .2,.4,.6,.8,.99,1} {
			b := l.Pose(last, m)
			fmt.Printf("   %.2f strain %.2g crossing %.3f\n", m, fold.Strain(&b), fold.Crossing(&b))
			fold.Debug(laid, last, m)
		}
	}
}
