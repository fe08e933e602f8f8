package packing

import (
	"sync"

	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
)

// Lesson returns the lesson of a bag with the motion of this package for its packing,
// where the bag has one. It does not measure the motion for this bag, as Solve does; the
// tests measure it for bags from 120 × 60 × 200 to 540 × 250 × 600 mm. The lesson may be
// asked for poses from several goroutines.
func Lesson(laid *blank.Blank) *fold.Lesson {
	lesson := fold.Fold(laid)
	motion, err := fitted(laid)
	if err != nil {
		return lesson // packed by folding alone, or not at all
	}
	var lock sync.Mutex
	lesson.PackBy(func(moment float64) fold.Body {
		lock.Lock()
		defer lock.Unlock()
		return motion.Body(moment)
	})
	return lesson
}
