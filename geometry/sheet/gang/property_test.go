package gang_test

import (
	"context"
	"math/rand/v2"
	"reflect"
	"testing"

	"gussetwright/geometry/sheet/gang"
)

// TestRandomJobs checks layouts, quantities and bounds of random jobs, and that they
// never take more than each bag on sheets of its own.
func TestRandomJobs(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	mixed, gained, none := 0, 0, 0
	const tries = 300
	for try := range tries {
		j := randomJob(random, 1+random.IntN(4), 2+10*random.Float64())
		r, err := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{})
		if err != nil {
			t.Fatalf("job %d: %v", try, err)
		}
		verify(t, j, r)
		separately := j.separately()
		if r.Sheets > separately {
			t.Errorf("job %d takes %d sheets, each bag for itself %d", try, r.Sheets, separately)
		}
		if r.Sheets < separately {
			gained++
		}
		for _, most := range []int{1, 2} {
			few, err := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{MostForms: most})
			if err != nil {
				none++
				continue
			}
			verify(t, j, few)
			if len(few.Forms) > most || few.Sheets < r.Bound {
				t.Errorf("job %d on at most %d forms: %d forms, %d sheets, bound of any forms %d", try, most, len(few.Forms), few.Sheets, r.Bound)
			}
			mixed++
		}
		if t.Failed() {
			t.Fatalf("job %d: %+v", try, j)
		}
	}
	if gained < tries/4 || mixed < tries/2 || none == 0 {
		t.Errorf("of %d jobs %d gained, %d were laid on few forms and %d not: the tries are too tame", tries, gained, mixed, none)
	}
}

func TestSameAgain(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for range 4 {
		j := randomJob(random, 5, 10)
		first, err1 := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{})
		second, err2 := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{})
		if err1 != nil || err2 != nil || !reflect.DeepEqual(first, second) {
			t.Errorf("solved twice: %v, %v, %d and %d sheets", err1, err2, first.Sheets, second.Sheets)
		}
	}
}
