package press_test

import (
	"bytes"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
	"gussetwright/render/press"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

// small returns a bag of which several fit on a sheet.
func small() bag.Spec {
	spec := bag.OfSize(120, 60, 160)
	spec.Name = "Small bag"
	return spec
}

// formsFor lays the bag on its sheet.
func formsFor(spec bag.Spec) (*blank.Blank, sheet.Plan, []press.Form) {
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	return &laid, plan, press.Forms(&laid, &plan)
}

// flood prints the whole bleed of every piece.
func flood(b *blank.Blank, piece int) []scene.Item {
	area := b.Pieces[piece].Box().Inset(-b.Spec.Print.Bleed).Path()
	return []scene.Item{scene.Fill{Role: scene.Artwork, Path: area, Ink: &scene.CMYK{C: 1}}}
}

// inked tells whether a blank prints at a point of the sheet: within the window of its
// place, and there within one of the clips of its part.
func inked(place scene.Place, part *scene.Part, p geometry.Vec2) bool {
	back, _ := place.At.Inverse()
	own := back.At(p)
	if !place.Window.Contains(p) {
		return false
	}
	for _, path := range part.Clip {
		if path.Contains(own) {
			return true
		}
	}
	return false
}

// placed is a blank of a drawing with its ink.
type placed struct {
	place   scene.Place
	part    *scene.Part
	outline geometry.Path // on the sheet
}

// inksOf gathers the inks of a drawing and where the outlines lie.
func inksOf(form *press.Form, drawing scene.Drawing) []placed {
	var list []placed
	for _, item := range drawing.Items {
		repeated, is := item.(scene.Repeated)
		if !is || repeated.Part.Role != scene.Artwork {
			continue
		}
		for _, place := range repeated.Places {
			for _, laid := range form.Blanks {
				if laid.Motion() != place.At {
					continue
				}
				outline := laid.Blank.Pieces[laid.Piece].Outline
				var points []geometry.Vec2
				for i := range outline.Len() {
					points = append(points, place.At.At(outline.Edge(i).From))
				}
				list = append(list, placed{place, repeated.Part, geometry.Polygon(points...)})
			}
		}
	}
	return list
}

// On the sheets of random bags, with narrow and wide gaps and blanks that interlock,
// no two blanks print on the same spot, none on another blank or in the gripper, and
// each prints on all of its own paper. Points on and around the outlines are tried.
func TestBleedsKeepApart(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 41))
	tried, nested, several := 0, 0, 0
	for round := range 1500 {
		spec := geomtest.RandomBag(random)
		spec.Sheet = bag.Default().Sheet
		if round%2 == 0 { // one that often interlocks
			spec.Body.Width, spec.Body.Gusset, spec.Body.Height = 70+80*random.Float64(), 40+60*random.Float64(), 80+100*random.Float64()
			spec.Body.Top, spec.Body.SeamFlap, spec.Body.Chamfer = bag.TopZigzag, 35, 30
			spec.Body.ZigzagPitch, spec.Body.ZigzagDepth = 20+10*random.Float64(), 12
			spec.Handle.Kind, spec.Body.Seams = bag.HandleNone, bag.SeamsOne
			if spec.Validate() != nil {
				continue
			}
		}
		spec.Sheet.Gap = float64(random.IntN(8))
		spec.Print.Bleed = 1 + 3*random.Float64()
		if random.IntN(2) == 0 {
			spec.Sheet.GripperEdge = bag.GripperShort
		}
		_, plan, forms := formsFor(spec)
		if plan.Nested {
			nested++
		} else if random.IntN(8) > 0 {
			continue
		}
		for f, drawing := range press.Draw(forms, "", flood, nil) {
			inks := inksOf(&forms[f], drawing)
			if len(inks) != len(forms[f].Blanks) {
				t.Fatalf("%d of %d blanks print", len(inks), len(forms[f].Blanks))
			}
			if len(inks) > 1 {
				several++
			}
			for range 1500 {
				i := random.IntN(len(inks))
				edge := inks[i].outline.Edge(random.IntN(inks[i].outline.Len()))
				at := edge.From.Add(edge.To.Sub(edge.From).Scale(random.Float64()))
				p := at.Add(geometry.Polar(5*random.Float64(), 2*math.Pi*random.Float64()))
				tried++
				prints, paper := 0, -1
				for k := range inks {
					if inked(inks[k].place, inks[k].part, p) {
						prints++
						if paper < 0 {
							paper = k
						}
					}
				}
				for k := range inks {
					if inks[k].outline.Contains(p) && (prints != 1 || paper != k) {
						t.Fatalf("gap %g: at %v lies blank %d, and %d blanks print, first %d", spec.Sheet.Gap, p, k, prints, paper)
					}
				}
				if prints > 1 {
					t.Fatalf("gap %g, bleed %g: %d blanks print at %v", spec.Sheet.Gap, spec.Print.Bleed, prints, p)
				}
				if deep := map[sheet.Grip]float64{sheet.GripBottom: p.Y, sheet.GripLeft: p.X}[sheet.GripOf(spec.Sheet)]; prints > 0 && deep < spec.Sheet.Gripper-geometry.Tolerance {
					t.Fatalf("a blank prints in the gripper, at %v", p)
				}
			}
		}
	}
	if tried < 50_000 || nested < 3 || several < 30 {
		t.Errorf("%d points, %d nested sheets and %d with several blanks were tried", tried, nested, several)
	}
}

// Marks and the colour bar lie on the sheet, off the gripper, and touch neither a blank
// nor its ink nor one another.
func TestMarksKeepClear(t *testing.T) {
	random := rand.New(rand.NewPCG(27, 18))
	marks, bars := 0, 0
	for range 150 {
		spec := geomtest.RandomBag(random)
		spec.Sheet = bag.Default().Sheet
		spec.Sheet.Gap, spec.Sheet.Side, spec.Sheet.Tail = 12*random.Float64(), 12*random.Float64(), 14*random.Float64()
		if random.IntN(2) == 0 {
			spec.Sheet.GripperEdge = bag.GripperShort
		}
		_, _, forms := formsFor(spec)
		for f, drawing := range press.Draw(forms, "", flood, nil) {
			inks := inksOf(&forms[f], drawing)
			for _, item := range drawing.Items {
				stroke, is := item.(scene.Stroke)
				if !is || stroke.Role != scene.PressMarks && stroke.Role != scene.ColourBar {
					continue
				}
				marks++
				if stroke.Role == scene.ColourBar {
					bars++
				}
				box := stroke.Path.Bounds()
				if !drawing.Trim.Contains(box.Min) || !drawing.Trim.Contains(box.Max) {
					t.Fatalf("%s at %v is off the sheet", stroke.Role, box)
				}
				if deep := map[sheet.Grip]float64{sheet.GripBottom: box.Min.Y, sheet.GripLeft: box.Min.X}[sheet.GripOf(spec.Sheet)]; deep < spec.Sheet.Gripper {
					t.Fatalf("%s at %v is in the gripper", stroke.Role, box)
				}
				for i := range stroke.Path.Len() {
					edge := stroke.Path.Edge(i)
					for share := 0.0; share <= 1; share += 0.05 {
						p := edge.From.Add(edge.To.Sub(edge.From).Scale(share))
						for k := range inks {
							if inked(inks[k].place, inks[k].part, p) || inks[k].outline.Contains(p) {
								t.Fatalf("%s at %v runs into blank %d", stroke.Role, p, k+1)
							}
						}
					}
				}
			}
		}
	}
	if marks < 300 || bars < 50 {
		t.Errorf("%d marks and %d bars were tried", marks, bars)
	}
}

// A bag with two seams: three places hold one whole bag on one sheet and half a bag more
// on two, so each piece gets its sheet; of four places both pieces share the sheet by
// turns.
func TestFormsOfTwoPieces(t *testing.T) {
	spec := small()
	spec.Body.Seams = bag.SeamsTwo
	for _, test := range []struct {
		width, height float64 // of the sheet; the piece is 200 to 210 × 270 to 280
		pieces        [][]int
	}{
		{450, 320, [][]int{{0, 1}}},
		{650, 320, [][]int{{0, 0, 0}, {1, 1, 1}}},
		{850, 320, [][]int{{0, 1, 0, 1}}},
		{230, 320, [][]int{{0}, {1}}},
		{100, 100, nil},
	} {
		spec.Sheet.Width, spec.Sheet.Height = test.width, test.height
		spec.Sheet.GripperEdge = bag.GripperLong
		if test.width < test.height {
			spec.Sheet.GripperEdge = bag.GripperShort
		}
		laid, plan, forms := formsFor(spec)
		if len(forms) != len(test.pieces) {
			t.Errorf("sheet %g × %g: %d forms of %d places, piece %g × %g; want %d", test.width, test.height, len(forms), plan.Up(), laid.Pieces[0].Width, laid.Pieces[0].Height, len(test.pieces))
			continue
		}
		for f, form := range forms {
			var pieces []int
			for i, l := range form.Blanks {
				pieces = append(pieces, l.Piece)
				if l.Box() != plan.Box(i) || l.Motion() != plan.Motion(i) {
					t.Errorf("blank %d lies in %v, the plan says %v", i, l.Box(), plan.Box(i))
				}
			}
			if len(pieces) != len(test.pieces[f]) || pieces[0] != test.pieces[f][0] || pieces[len(pieces)-1] != test.pieces[f][len(pieces)-1] {
				t.Errorf("sheet %g × %g, form %d: pieces %v, want %v", test.width, test.height, f, pieces, test.pieces[f])
			}
		}
	}
}

// filled returns a sheet that a blank and its bleed fill to 1 mm on all sides beyond the
// gripper.
func filled(spec bag.Spec) press.Form {
	laid := blank.Lay(spec)
	box := laid.Pieces[0].Box()
	spec.Sheet.Width, spec.Sheet.Height = box.Width()+2*4, box.Height()+spec.Sheet.Gripper+3+4
	return press.Form{Sheet: spec.Sheet, Blanks: []press.Laid{{Blank: &laid, At: sheet.Placement{X: 4, Y: spec.Sheet.Gripper + 3}}}}
}

// What is left out is said, with what would make room for it.
func TestWhatIsLeftOutIsSaid(t *testing.T) {
	drawing := press.Draw([]press.Form{filled(small())}, "2026-03-31", nil, nil)[0]
	var text []string
	for _, item := range drawing.Items {
		if label, is := item.(scene.Label); is {
			text = append(text, label.Text)
		}
		if role := item.Layer(); role == scene.ColourBar {
			t.Errorf("there is a colour bar: %v", item)
		}
	}
	all := strings.Join(text, "\n")
	for _, want := range []string{
		"No room for a colour bar: the bleed leaves 1 mm of the tail, a bar takes 4; widen the tail margin.",
		"No register mark at the left side: beside the bleed it takes 5 mm of margin.",
		"No register mark at the tail", "Date: 2026-03-31", "1-up: 1 × blank, 379.5 × 260 mm", "Have printer and die-maker check", "gripper 12 mm: no ink",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not said in\n%s", want, all)
		}
	}
}

// Labels keep clear of each other in the slug below and around the sheet.
func TestLetteringKeepsApart(t *testing.T) {
	for _, size := range [][2]float64{{1000, 700}, {450, 320}, {707, 1000}} {
		spec := small()
		spec.Sheet.Width, spec.Sheet.Height = size[0], size[1]
		_, _, forms := formsFor(spec)
		drawing := press.Draw(forms, "2026-03-31", flood, nil)[0]
		var boxes []geometry.Rect
		var labels []scene.Label
		for _, item := range drawing.Items {
			if label, is := item.(scene.Label); is && label.Role != scene.PieceNumbers {
				boxes, labels = append(boxes, press.LabelBox(label)), append(labels, label)
			}
		}
		for i, a := range boxes {
			if !drawing.Media.Contains(a.Min) || !drawing.Media.Contains(a.Max) {
				t.Errorf("%q runs off the page", labels[i].Text)
			}
			for k, b := range boxes[:i] {
				if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
					t.Errorf("sheet %v: %q and %q overlap", size, labels[i].Text, labels[k].Text)
				}
			}
		}
	}
}

func TestGolden(t *testing.T) {
	spec := small()
	spec.Sheet.Width, spec.Sheet.Height = 850, 320
	two := spec
	two.Name, two.Body.Seams, two.Sheet.GripperEdge = "", bag.SeamsTwo, bag.GripperShort
	for name, spec := range map[string]bag.Spec{"press/small.svg": spec, "press/two-pieces.svg": two} {
		_, _, forms := formsFor(spec)
		var out bytes.Buffer
		if err := svg.Write(&out, press.Draw(forms, "2026-03-31", nil, nil)); err != nil {
			t.Fatal(err)
		}
		geomtest.Golden(t, name, out.Bytes())
	}
}

// BenchmarkDraw is the drawing of a sheet with several blanks.
func BenchmarkDraw(b *testing.B) {
	_, plan, forms := formsFor(small())
	b.ReportMetric(float64(plan.Up()), "blanks")
	b.ReportAllocs()
	for b.Loop() {
		press.Draw(forms, "2026-03-31", flood, nil)
	}
}
