package jobsheet

import (
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/report"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// textBox returns the box of a text of the page, from its baseline to the top of its
// capitals.
func textBox(text report.Text) geometry.Rect {
	width := typeface.Advance(text.Text, text.Size, text.Bold)
	left := 0.0
	switch text.Align {
	case scene.Middle:
		left = -width / 2
	case scene.End:
		left = -width
	}
	box := geometry.RectAt(left, 0, width, 0.7*text.Size)
	return geometry.Shift(text.At).After(geometry.Rotation(text.Turn)).Bounds(box)
}

// checkPage tells whether all texts lie within the margins, none over another, and none
// is smaller than 8 points but for those of the drawings.
func checkPage(t *testing.T, name string, page report.Page) {
	t.Helper()
	area := geometry.RectAt(0, 0, page.Width, page.Height).Inset(margin - 0.01)
	var boxes []geometry.Rect
	var texts []string
	for _, item := range page.Items {
		switch item := item.(type) {
		case report.Text:
			box := textBox(item)
			if !area.Contains(box.Min) || !area.Contains(box.Max) {
				t.Errorf("%s: %q lies outside of the margins: %v", name, item.Text, box)
			}
			for i, other := range boxes {
				common := geometry.Rect{
					Min: geometry.Vec2{X: max(box.Min.X, other.Min.X), Y: max(box.Min.Y, other.Min.Y)},
					Max: geometry.Vec2{X: min(box.Max.X, other.Max.X), Y: min(box.Max.Y, other.Max.Y)},
				}
				if !common.Inset(0.05).Empty() {
					t.Errorf("%s: %q lies over %q", name, item.Text, texts[i])
				}
			}
			boxes, texts = append(boxes, box), append(texts, item.Text)
		case report.Shape:
			if box := item.Path.Bounds(); !area.Contains(box.Min) || !area.Contains(box.Max) {
				t.Errorf("%s: a line lies outside of the margins: %v", name, box)
			}
		}
	}
	if len(texts) < 60 {
		t.Errorf("%s: only %d texts", name, len(texts))
	}
}

// Nothing is cut off or lies over anything else, and what is to be read has 8 points at
// least; only letters in drawings are smaller.
func TestNothingIsCutOff(t *testing.T) {
	for name, spec := range kinds(t) {
		for _, unit := range geometry.Units() {
			order := orderOf(t, spec)
			order.Unit = unit
			page := pageOf(t, order)
			checkPage(t, name+", "+string(unit), page)
			for _, item := range page.Items {
				if text, is := item.(report.Text); is && text.Size < 8*point-1e-9 && len(text.Text) > 12 {
					t.Errorf("%s, %s: %q has %.1f points", name, unit, text.Text, text.Size/point)
				}
			}
		}
	}
}

// Words of twice the length still go on one page, within the margins.
func TestLongWordsStayOnThePage(t *testing.T) {
	for name, spec := range kinds(t) {
		order := orderOf(t, spec)
		order.Say = func(text string) string {
			if strings.Contains(text, "%") || len(text) < 4 {
				return text
			}
			return text + "-" + strings.ReplaceAll(text, " ", "")
		}
		checkPage(t, name, pageOf(t, order))
	}
}

// Drawings keep the proportions of what they show: the outline of the blank and the edge
// of the sheet have the ratio of their sides, and each blank on the sheet has its size at
// the scale of the sheet.
func TestDrawingsAreInProportion(t *testing.T) {
	area := geometry.RectAt(10, 150, 90, 60)
	for name, spec := range kinds(t) {
		m := makerOf(t, orderOf(t, spec))
		ratio := func(of geometry.Rect) float64 { return of.Width() / of.Height() }
		near := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-6*want {
				t.Errorf("%s: %s is %g, want %g", name, what, got, want)
			}
		}
		piece := &m.Snapshot.Blank.Pieces[0]
		outline := m.blankPicture(area, 2.5)[0].(report.Shape).Path.Bounds()
		near("the ratio of the blank", ratio(outline), piece.Width/piece.Height)
		var sheet geometry.Rect
		for i, item := range m.sheetPicture(area, 2.5) {
			shape, is := item.(report.Shape)
			if !is {
				continue
			}
			box := shape.Path.Bounds()
			if i == 0 {
				sheet = box
				near("the ratio of the sheet", ratio(sheet), m.Snapshot.Plan.Sheet.Width/m.Snapshot.Plan.Sheet.Height)
				continue
			}
			if at := i - 2; m.Snapshot.Plan.Sheet.Gripper > 0 && at >= 0 && at < len(m.onSheet()) {
				scale, placed := sheet.Width()/m.Snapshot.Plan.Sheet.Width, m.onSheet()[at].box
				near("the width of a blank on the sheet", box.Width(), scale*placed.Width())
				near("the place of a blank on the sheet", box.Min.X-sheet.Min.X+1, scale*placed.Min.X+1)
				near("the depth of a blank on the sheet", box.Min.Y-sheet.Min.Y+1, scale*placed.Min.Y+1)
			}
		}
	}
}
