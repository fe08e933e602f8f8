package press_test

import (
	"math"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/placement"
	"gussetwright/render/press"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// black prints all of a piece in black but for what must stay free of ink.
func black(b *blank.Blank, piece int) []scene.Item {
	p := &b.Pieces[piece]
	items := []scene.Item{scene.Fill{Role: scene.Artwork, Path: p.BleedOutline(b.Spec.Print.Bleed), Ink: &scene.CMYK{K: 1}}}
	for _, area := range placement.InkFree(p, b.Spec) {
		items = append(items, scene.Fill{Role: scene.Artwork, Path: area, Ink: &scene.CMYK{}})
	}
	return items
}

// overFlap prints over the seam flap what no white takes away.
func overFlap(b *blank.Blank, piece int) []scene.Item {
	return append(black(b, piece), scene.Placed{At: geometry.Stretch(100, 100), Clip: b.Pieces[piece].Box().Path(), Opacity: 1})
}

// corners returns the corners of the capitals of a number, and its middle.
func corners(label scene.Label) []geometry.Vec2 {
	along := geometry.Polar(1, label.Turn)
	half := along.Scale(typeface.Advance(label.Text, label.Size, true) / 2)
	up := along.Left().Scale(0.7 * label.Size)
	foot, head := label.At, label.At.Add(up)
	return []geometry.Vec2{foot.Sub(half), foot.Add(half), head.Sub(half), head.Add(half), foot.Mid(head)}
}

// On printed blanks all of each number lies on paper that goes without ink, turned with
// its blank; on bare paper, and where all is printed, it stands in the middle of a face.
func TestNumbersKeepOffInk(t *testing.T) {
	one, two, narrow := small(), small(), small()
	one.Body.Seams, two.Body.Seams = bag.SeamsOne, bag.SeamsTwo
	narrow.Body.SeamFlap = 10
	mixedForm := mixed()
	forms := map[string][]press.Form{"four turns and two bags": {mixedForm}}
	for name, spec := range map[string]bag.Spec{"one seam": one, "two seams": two, "narrow flap": narrow} {
		_, _, forms[name] = formsFor(spec)
	}
	for name, forms := range forms {
		for i, form := range forms {
			printed, bare, full := press.Draw(forms, "", black, nil)[i], press.Draw(forms, "", nil, nil)[i], press.Draw(forms, "", overFlap, nil)[i]
			printedNumbers, bareNumbers, fullNumbers := numbersOf(printed), numbersOf(bare), numbersOf(full)
			if len(printedNumbers) != len(form.Blanks) || len(printedNumbers) == 0 {
				t.Fatalf("%s: %d numbers for %d blanks", name, len(printedNumbers), len(form.Blanks))
			}
			for k, laid := range form.Blanks {
				back, _ := laid.Motion().Inverse()
				for _, corner := range corners(printedNumbers[k]) {
					if p := back.At(corner); !free(laid.Blank, laid.Piece, p) {
						t.Errorf("%s: number %q reaches %v of its blank, where ink is", name, printedNumbers[k].Text, p)
					}
				}
				turn := printedNumbers[k].Turn - float64(laid.At.Turn)*math.Pi/180
				if turn != 0 && math.Abs(turn-math.Pi/2) > 1e-9 {
					t.Errorf("%s: number %q is turned by %g against its blank", name, printedNumbers[k].Text, turn)
				}
				face := laid.Blank.Pieces[laid.Piece].Panels
				if middle := back.At(corners(bareNumbers[k])[4]); !onFace(face, middle) {
					t.Errorf("%s: on bare paper number %q stands at %v", name, bareNumbers[k].Text, middle)
				}
				if fullNumbers[k] != bareNumbers[k] {
					t.Errorf("%s: where all is printed number %q stands elsewhere", name, fullNumbers[k].Text)
				}
			}
		}
	}
}

// free tells whether a point of a piece is paper that goes without ink.
func free(b *blank.Blank, piece int, p geometry.Vec2) bool {
	for _, area := range placement.InkFree(&b.Pieces[piece], b.Spec) {
		if area.Contains(p) {
			return b.Pieces[piece].Outline.Contains(p)
		}
	}
	return false
}

func onFace(panels []blank.Panel, p geometry.Vec2) bool {
	for _, panel := range panels {
		if (panel.ID == "front" || panel.ID == "back") && panel.Shape.Contains(p) {
			return true
		}
	}
	return false
}

// numbersOf returns the numbers of blanks on a drawing.
func numbersOf(drawing scene.Drawing) []scene.Label {
	var numbers []scene.Label
	for _, item := range drawing.Items {
		if label, is := item.(scene.Label); is && label.Role == scene.PieceNumbers {
			numbers = append(numbers, label)
		}
	}
	return numbers
}
