package creases_test

import (
	"slices"
	"testing"

	"gussetwright/app/creases"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
)

func crease(piece int, role blank.Role, of blank.Fold, x1, y1, x2, y2 float64) fold.Crease {
	return fold.Crease{Piece: piece, Role: role, Fold: of, Edge: geometry.Edge{
		From: geometry.Vec2{X: x1, Y: y1}, To: geometry.Vec2{X: x2, Y: y2},
	}}
}

func TestRuns(t *testing.T) {
	top, edge, corner := blank.RoleTopFold, blank.RolePanelEdge, blank.RoleBaseCorner
	tests := []struct {
		name string
		list []fold.Crease
		want []creases.Run
	}{
		{"none", nil, nil},
		{"parts of one line", []fold.Crease{
			crease(0, top, blank.Mountain, 0, 9, 240, 9), crease(0, top, blank.Mountain, 340, 9, 240, 9), crease(0, top, blank.Mountain, 340, 9, 700, 9),
		}, []creases.Run{{top, blank.Mountain, 700, 1}}},
		{"the middle part comes last", []fold.Crease{
			crease(0, top, blank.Mountain, 0, 9, 240, 9), crease(0, top, blank.Mountain, 340, 9, 700, 9), crease(0, top, blank.Mountain, 240, 9, 340, 9),
		}, []creases.Run{{top, blank.Mountain, 700, 1}}},
		{"with a gap between", []fold.Crease{
			crease(0, top, blank.Mountain, 0, 9, 240, 9), crease(0, top, blank.Mountain, 241, 9, 701, 9),
		}, []creases.Run{{top, blank.Mountain, 460, 1}, {top, blank.Mountain, 240, 1}}},
		{"on two pieces", []fold.Crease{
			crease(0, top, blank.Mountain, 0, 9, 100, 9), crease(1, top, blank.Mountain, 100, 9, 200, 9),
		}, []creases.Run{{top, blank.Mountain, 100, 2}}},
		{"folded the other way", []fold.Crease{
			crease(0, edge, blank.Mountain, 5, 0, 5, 100), crease(0, edge, blank.Valley, 5, 100, 5, 200),
		}, []creases.Run{{edge, blank.Mountain, 100, 1}, {edge, blank.Valley, 100, 1}}},
		{"round a corner", []fold.Crease{
			crease(0, corner, blank.Valley, 0, 0, 30, 40), crease(0, corner, blank.Valley, 30, 40, 60, 0),
		}, []creases.Run{{corner, blank.Valley, 50, 2}}},
		{"roles stay together", []fold.Crease{
			crease(0, edge, blank.Mountain, 5, 0, 5, 100), crease(0, top, blank.Mountain, 0, 9, 90, 9), crease(0, edge, blank.Mountain, 9, 0, 9, 200),
		}, []creases.Run{{edge, blank.Mountain, 200, 1}, {edge, blank.Mountain, 100, 1}, {top, blank.Mountain, 90, 1}}},
	}
	for _, test := range tests {
		if got := creases.Runs(test.list); !slices.Equal(got, test.want) {
			t.Errorf("%s: %v, want %v", test.name, got, test.want)
		}
	}
}

// The creases of the worked example, counted by hand: the blank is 700 wide, the body
// 360 and the base flaps 70 high, the turn-in 50.
func TestRunsOfABag(t *testing.T) {
	laid := blank.Lay(geomtest.WorkedExample())
	counted := map[string][]creases.Run{}
	for _, stage := range fold.Fold(&laid).Stages {
		counted[stage.Name] = creases.Runs(stage.Creases)
	}
	for name, want := range map[string]creases.Run{
		"turn-in":    {blank.RoleTopFold, blank.Mountain, 700, 1},
		"base-front": {blank.RoleBase, blank.Mountain, 240, 1},
		"base-back":  {blank.RoleBase, blank.Mountain, 240, 1},
	} {
		if got := counted[name]; !slices.Equal(got, []creases.Run{want}) {
			t.Errorf("%s folds %v, want %v", name, got, want)
		}
	}
	// Above the top fold and below the base crease the layers lie the other way round.
	edge := blank.RolePanelEdge
	want := []creases.Run{{edge, blank.Mountain, 360, 4}, {edge, blank.Valley, 70, 4}, {edge, blank.Valley, 50, 4}}
	if got := counted["tube"]; !slices.Equal(got, want) {
		t.Errorf("the tube folds %v, want %v", got, want)
	}
}

// With the print side on the table the turn-in and the panels are folded up, toward the
// viewer, which is what a valley is; the base is closed from outside, where its creases are
// mountains. Mountain and valley are those of origami diagrams (edemaine/fold, spec.md: a
// valley has a positive angle and closes toward the viewer; from memory).
func TestFoldsAreNamedFromTheSideThatIsUp(t *testing.T) {
	laid := blank.Lay(geomtest.WorkedExample())
	for _, stage := range fold.Fold(&laid).Stages {
		reverse := slices.Contains([]string{"blank", "top-cards", "turn-in", "tube"}, stage.Name)
		if creases.ReverseUp(&stage) != reverse {
			t.Errorf("%s: the reverse is up %v", stage.Name, !reverse)
		}
		seen := creases.Seen(&stage)
		for i, c := range stage.Creases {
			want := c.Fold
			if reverse {
				want = c.Fold.Opposite()
			}
			if seen[i].Fold != want || seen[i].Edge != c.Edge {
				t.Errorf("%s: %+v is seen as %+v", stage.Name, c, seen[i])
			}
		}
		first := map[string]blank.Fold{"turn-in": blank.Valley, "tube": blank.Valley, "base-front": blank.Mountain}
		if want, known := first[stage.Name]; known && creases.Runs(seen)[0].Fold != want {
			t.Errorf("%s: the longest crease is seen as a %s", stage.Name, creases.Runs(seen)[0].Fold)
		}
	}
}

// Every crease on a bag has a name.
func TestEveryCreaseHasAName(t *testing.T) {
	laid := blank.Lay(geomtest.WorkedExample())
	for _, line := range laid.Pieces[0].Lines {
		named := creases.Name(line.Role) != "" && creases.Fold(line.Fold) != ""
		if named != (line.Kind == blank.Crease) {
			t.Errorf("a %s of the role %s is called %q, %q", line.Kind, line.Role, creases.Name(line.Role), creases.Fold(line.Fold))
		}
	}
}
