package pdf

import (
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
)

func TestWhatShinesThrough(t *testing.T) {
	state := func(entries ...entry) *object.Form {
		return &object.Form{Resources: dict{{"ExtGState", &object.Indirect{Value: dict{{"G", dict(entries)}}}}}}
	}
	image := func(mask object.Object) *object.Form {
		return &object.Form{Resources: dict{{"XObject", dict{{"I", &object.Indirect{Value: plain{Dict: dict{{"Subtype", name("Image")}, {"SMask", mask}}}}}}}}}
	}
	group := &object.Form{Group: dict{{"S", name("Transparency")}}}
	within := &object.Form{Resources: dict{{"XObject", dict{{"F", group.XObject()}}}}}
	for _, c := range []struct {
		name string
		form *object.Form
		want bool
	}{
		{"nothing", &object.Form{}, false},
		{"full", state(entry{"ca", integer(1)}, entry{"CA", number(1)}, entry{"BM", name("Normal")}, entry{"SMask", name("None")}), false},
		{"areas", state(entry{"ca", number(0.99)}), true},
		{"lines", state(entry{"CA", integer(0)}), true},
		{"multiply", state(entry{"BM", name("Multiply")}), true},
		{"soft mask", state(entry{"SMask", dict{{"S", name("Alpha")}}}), true},
		{"image with alpha", image(&object.Indirect{Value: plain{}}), true},
		{"image without", image(nil), false},
		{"group", group, true},
		{"group within", within, true},
	} {
		if got := blends(c.form); got != c.want {
			t.Errorf("%s: blends is %t", c.name, got)
		}
	}
}

// Source: pdftotext and both readers. Over artwork through which something shines,
// lettering is an area, yet found as text and seen in the colour of its step.
func TestLetteringOverFadedArtwork(t *testing.T) {
	drawing := page("Faded")
	drawing.Items = []scene.Item{
		scene.Placed{Form: quadrants(), At: at(0, 0, 300, 0, 0, 200), Opacity: 0.5},
		scene.Label{Role: scene.Legend, Text: "Front ■ 240 × 360 mm", At: at(0, 0, 0, 0, 0, 0).Origin, Size: 8},
		scene.Label{Role: scene.Legend, Text: "I", At: at(150, 150, 0, 0, 0, 0).Origin, Size: 60, Bold: true, Anchor: scene.Middle},
	}
	file := produceFile(t, []scene.Drawing{drawing}, true)
	if out := string(geomtest.Run(t, "pdftotext", "-raw", file, "-")); !strings.Contains(out, "240 × 360 mm") {
		t.Errorf("the text is not found in %q", out)
	}
	for reader, picture := range rasterise(t, file) {
		x, y := (150-int(drawing.Media.Min.X))*pixelsPerMM, (int(drawing.Media.Max.Y)-170)*pixelsPerMM
		r, g, b, _ := picture.At(x, y).RGBA()
		if max(r, g, b) > 100<<8 {
			t.Errorf("%s shows %d %d %d in the stem of the letter, want it dark", reader, r>>8, g>>8, b>>8)
		}
	}
}
