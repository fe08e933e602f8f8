package gang_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/gang"
)

// rowsJob is a cutting stock problem of rows: all pieces are as high as the sheet.
func rowsJob(room float64, lengths, wanted []int) job {
	const high = 100
	j := job{sheet: bag.Sheet{Width: room, Height: high, GripperEdge: bag.GripperLong}}
	for i, length := range lengths {
		j.items = append(j.items, gang.Item{Name: fmt.Sprint(length), Bags: wanted[i], Piece: sheet.Piece{
			Width: float64(length), Height: high, PerBag: 1, Area: float64(length * high), Fibres: bag.GrainHeight, SheetFibres: bag.GrainHeight,
		}})
	}
	return j
}

// TestPaperRolls cuts the much-printed example of 13 widths from rolls of 5600 mm, whose
// optimum is 73 rolls (article "Cutting stock problem", Wikipedia; values from memory).
func TestPaperRolls(t *testing.T) {
	j := rowsJob(5600,
		[]int{1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200},
		[]int{22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20})
	r, err := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{})
	if err != nil {
		t.Fatal(err)
	}
	verify(t, j, r)
	if r.Sheets != 73 || r.Bound != 73 {
		t.Errorf("%d rolls, bound %d; want 73", r.Sheets, r.Bound)
	}
}

// TestRowsAgainstSolver compares with the least whole sheets that the solver named in
// testdata/gang/programs.json found, with all patterns given to it.
func TestRowsAgainstSolver(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(geomtest.Root(t), "testdata", "gang", "programs.json"))
	if err != nil {
		t.Fatal(err)
	}
	var outside struct {
		Solver string
		Cases  []struct {
			Room            float64
			Lengths, Wanted []int
			Whole           int
		}
	}
	if err := json.Unmarshal(data, &outside); err != nil {
		t.Fatal(err)
	}
	missed := 0
	for i, c := range outside.Cases {
		j := rowsJob(c.Room, c.Lengths, c.Wanted)
		r, err := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{})
		if err != nil {
			t.Fatalf("case %d: %v", i, err)
		}
		verify(t, j, r)
		if r.Bound > c.Whole || r.Sheets < c.Whole || r.Sheets > c.Whole+1 {
			t.Errorf("case %d: %d sheets, bound %d; %s found %d", i, r.Sheets, r.Bound, outside.Solver, c.Whole)
		}
		if r.Sheets > c.Whole {
			missed++
		}
	}
	if missed > len(outside.Cases)/20 {
		t.Errorf("%d of %d cases take a sheet more than %s found", missed, len(outside.Cases), outside.Solver)
	}
}
