package press_test

import (
	"regexp"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/render/press"
	"gussetwright/render/scene"
	"gussetwright/render/scene/scenetest"
)

// sheetsOfEveryKind are forms with every text that a sheet may have.
func sheetsOfEveryKind() []press.Form {
	full, narrow, apart, short := small(), small(), bag.OfSize(320, 120, 410), small()
	full.Name, narrow.Name, apart.Name, short.Name = "", "", "", ""
	full.Body.Width = 120.5
	narrow.Sheet.Side, narrow.Sheet.Tail, narrow.Sheet.Gap, narrow.Sheet.Gripper = 0, 0, 0, 0
	apart.Body.Seams = bag.SeamsTwo
	short.Sheet.GripperEdge, short.Sheet.Side, short.Print.Bleed = bag.GripperShort, 0.5, 2.5
	var forms []press.Form
	for _, spec := range []bag.Spec{full, narrow, apart, short} {
		_, _, more := formsFor(spec)
		forms = append(forms, more...)
	}
	several := mixed()
	several.Title = ""
	for i := range several.Blanks {
		several.Blanks[i].Blank.Spec.Name = ""
	}
	return append(forms, several, filled(full))
}

// Every text and number of a press sheet is asked of the voice; long words keep on the
// page and apart from each other.
func TestEveryTextIsSaidByTheVoice(t *testing.T) {
	latin, pointed := regexp.MustCompile(`[A-Za-z]`), regexp.MustCompile(`\d\.\d`)
	forms := sheetsOfEveryKind()
	var all strings.Builder
	for _, drawing := range press.Draw(forms, "2026-03-31", flood, scenetest.Foreign()) {
		var below []geometry.Rect
		for _, item := range drawing.Items {
			label, is := item.(scene.Label)
			if !is {
				continue
			}
			all.WriteString(label.Text + "\n")
			text := strings.ReplaceAll(label.Text, " mm", "")
			for _, role := range scene.AllRoles() {
				text = strings.TrimPrefix(text, role.String()+": ")
			}
			if latin.MatchString(text) || pointed.MatchString(text) {
				t.Errorf("%q is not said in the language of the reader", label.Text)
			}
			box := press.LabelBox(label)
			if !drawing.Media.Contains(box.Min) || !drawing.Media.Contains(box.Max) {
				t.Errorf("%q reaches %v, off the page %v", label.Text, box, drawing.Media)
			}
			if label.Role != scene.Legend {
				continue
			}
			for _, other := range below {
				if box.Min.X < other.Max.X && other.Min.X < box.Max.X && box.Min.Y < other.Max.Y-label.Size/4 && other.Min.Y < box.Max.Y-label.Size/4 {
					t.Errorf("%q runs into another text", label.Text)
				}
			}
			below = append(below, box)
		}
	}
	for _, english := range []string{
		"front lay", "side lay", "grain of the sheet", "colour bar", "press sheet", "Lines", "No register mark at ",
		"the left side", "No room for a colour bar", "front piece", "between blanks up to half their gap", "off the sheet",
	} {
		if !strings.Contains(all.String(), scenetest.InGreek(english)) {
			t.Errorf("no sheet says %q", english)
		}
	}
	if !strings.Contains(all.String(), ",5") {
		t.Error("no number has decimals")
	}
}
