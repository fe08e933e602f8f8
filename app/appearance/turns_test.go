package appearance

import "testing"

func TestTurnsWaitForThePicture(t *testing.T) {
	var drawn func() // what waits for a picture
	made := 0
	turns := NewTurns(func() { made++ })
	turns.afterDrawn = func(do func()) { drawn = do }
	picture := func(want int) {
		t.Helper()
		if made != want {
			t.Fatalf("the change was made %d times, want %d", made, want)
		}
		if do := drawn; do != nil {
			drawn = nil
			do()
		}
	}
	turns.Ask()
	turns.Ask()
	turns.Ask()
	picture(1)
	picture(2)
	picture(2)
	if drawn != nil {
		t.Error("a picture is waited for, and nothing is to be done after it")
	}
	turns.Ask()
	picture(3)
}

func TestTurnIsOverWhereNothingIsDrawn(t *testing.T) {
	made := 0
	turns := NewTurns(func() { made++ })
	for range 3 {
		turns.Ask()
	}
	if made != 3 {
		t.Errorf("the change was made %d times of 3 in a test, where no picture is drawn", made)
	}
}
