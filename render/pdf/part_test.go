package pdf

import (
	"bytes"
	"image"
	"math"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
)

// sheetOf returns a sheet of 200 × 150 mm on which a piece of 40 × 20 mm, with the
// quadrants and a cut edge, lies at each of the places, and a cross on every plate.
func sheetOf(places ...scene.Place) scene.Drawing {
	media := geometry.RectAt(-10, -20, 200, 150)
	piece := geometry.RectAt(0, 0, 40, 20)
	art := &scene.Part{
		Role:  scene.Artwork,
		Items: []scene.Item{scene.Placed{Form: quadrants(), At: geometry.Stretch(40, 20), Opacity: 1}},
		Clip:  []geometry.Path{geometry.RectAt(0, 0, 20, 20).Path(), geometry.RectAt(15, 0, 22, 20).Path()},
	}
	cut := &scene.Part{Role: scene.Cutting, Items: []scene.Item{
		scene.Stroke{Role: scene.Cutting, Path: piece.Path(), Width: 0.35},
		scene.Label{Role: scene.Cutting, Text: "cut", At: geometry.Vec2{X: 2, Y: 3}, Size: 4},
	}}
	whole := make([]scene.Place, len(places))
	for i := range places {
		whole[i].At = places[i].At
	}
	return scene.Drawing{Title: "Sheet", Media: media, Bleed: media, Trim: media.Inset(3), Items: []scene.Item{
		scene.Repeated{Part: cut, Places: whole},
		scene.Repeated{Part: art, Places: places},
		line(scene.PressMarks, 150, 100, 160, 100), line(scene.Gripper, 0, -15, 180, -15),
	}}
}

func lying(x, y float64, degrees float64) geometry.Affine {
	return geometry.Shift(geometry.Vec2{X: x, Y: y}).After(geometry.Rotation(degrees * math.Pi / 180))
}

// Source: poppler and mupdf. Of a part that lies upright, turned by a quarter, a half
// and three, and once behind a window, the colours stand where the turns were worked
// out by hand; the union of the clips ends at 37 of 40 mm.
func TestPartsReadByPopplerAndMupdf(t *testing.T) {
	const p = 0.15
	sheet := sheetOf(
		scene.Place{At: lying(0, 0, 0)},
		scene.Place{At: lying(70, 0, 90)},    // covers 50 to 70, 0 to 40
		scene.Place{At: lying(120, 20, 180)}, // covers 80 to 120, 0 to 20
		scene.Place{At: lying(0, 90, 270)},   // covers 0 to 20, 50 to 90
		scene.Place{At: lying(40, 60, 0), Window: geometry.RectAt(45, 65, 100, 100)},
	)
	file := produceFile(t, []scene.Drawing{sheet}, true)
	geomtest.Run(t, "qpdf", "--check", file)
	look(t, "parts", file, sheet.Media, []seen{
		{10, 8, red},
		{30, 8, green},
		{10, 16, blue},
		{30, 16, yellow},
		{37 - p, 8, green},
		{37 + p, 8, white},
		{20, 10, dark},
		{62, 10, red},
		{62, 30, green},
		{54, 10, blue},
		{54, 30, yellow},
		{62, 37 - p, green},
		{62, 37 + p, white},
		{110, 12, red},
		{90, 12, green},
		{110, 4, blue},
		{90, 4, yellow},
		{83 + p, 12, green},
		{83 - p, 12, white},
		{8, 80, red},
		{8, 60, green},
		{16, 80, blue},
		{16, 60, yellow},
		{8, 53 + p, green},
		{8, 53 - p, white},
		{45 + p, 66, red},
		{45 - p, 66, white},
		{50, 65 + p, red},
		{50, 65 - p, white},
		{70, 75, yellow},
		{77 + p, 75, white},
	})
}

// Source: qpdf. Each part and its artwork stand in the file once, and a sheet with
// eight places takes little more than one with a single place.
func TestPartsStandInTheFileOnce(t *testing.T) {
	var places []scene.Place
	for i := range 8 {
		places = append(places, scene.Place{At: lying(float64(i%4)*45, float64(i/4)*30, 0)})
	}
	sheet := sheetOf(places...)
	data := produce(t, []scene.Drawing{sheet, sheet}, true)
	d := readFileByQpdf(t, save(t, data))
	forms := 0
	for _, o := range d.objects {
		if o.Stream.Dict != nil && d.get(o.Stream.Dict, "Subtype") == "/Form" {
			forms++
		}
	}
	if forms != 3 {
		t.Errorf("%d forms on two sheets, want those of artwork, its part and the die", forms)
	}
	for _, page := range d.pages() {
		if got := keys(d.get(page, "Resources", "XObject")); !slices.Equal(got, []string{"Part1", "Part2"}) {
			t.Errorf("a page names %v", got)
		}
	}
	one := produce(t, []scene.Drawing{sheetOf(places[0])}, true)
	eight := produce(t, []scene.Drawing{sheet}, true)
	if more := len(eight) - len(one); more > 300 {
		t.Errorf("seven more places take %d bytes", more)
	}
	if again := produce(t, []scene.Drawing{sheetOf(places...)}, true); !bytes.Equal(again, eight) {
		t.Error("the same sheet gives other bytes")
	}
}

// Source: Ghostscript. The die is on its plate alone, and marks are on every plate, that
// of the die included.
func TestMarksAreOnEveryPlate(t *testing.T) {
	cyan := &scene.Part{Role: scene.Artwork, Items: []scene.Item{scene.Fill{Role: scene.Artwork, Path: geometry.RectAt(0, 0, 40, 20).Path(), Ink: &scene.CMYK{C: 1}}}}
	sheet := sheetOf(scene.Place{At: lying(0, 0, 0)}, scene.Place{At: lying(120, 20, 180)})
	sheet.Items[1] = scene.Repeated{Part: cyan, Places: []scene.Place{{At: lying(0, 0, 0)}, {At: lying(120, 20, 180)}}}
	thick := sheet.Items[2].(scene.Stroke)
	thick.Width = 3
	sheet.Items[2] = thick
	found := separate(t, sheet, true)
	pixel := func(plate *image.Gray, x, y float64) uint8 {
		return plate.GrayAt(int((x-sheet.Media.Min.X)*pointsPerMM), int((sheet.Media.Max.Y-y)*pointsPerMM)).Y
	}
	for _, ink := range append(slices.Clone(processInks), "Cutting", "Gripper") {
		if got := pixel(found[ink], 155, 100); got != 0 {
			t.Errorf("the mark prints as %d on the %s plate", got, ink)
		}
	}
	if found["PressMarks"] != nil || found["All"] != nil {
		t.Error("the marks have a plate of their own")
	}
	for _, ink := range processInks[1:] {
		for y := -2.0; y < 22; y += 0.2 {
			for x := -2.0; x < 122; x += 0.2 {
				if got := pixel(found[ink], x, y); got != 255 {
					t.Fatalf("the %s plate prints %d at (%g, %g)", ink, got, x, y)
				}
			}
		}
	}
	for _, x := range []float64{0.5, 10, 39.5, 80.5, 119.5} { // beside and beneath the cut edges
		if got := pixel(found["Cyan"], x, 10); got != 0 {
			t.Errorf("cyan prints %d at x %g", got, x)
		}
	}
	if fullest, _ := extremes(found["Cutting"]); fullest > 128 {
		t.Errorf("the cutting plate prints down to %d", fullest)
	}
}

// What shines through within a part makes the page one for blending, and what PDF/X-4
// does not allow is found there too.
func TestArtworkWithinPartsIsLookedAt(t *testing.T) {
	sheet := sheetOf(scene.Place{At: lying(0, 0, 0)})
	sheet.Items[1].(scene.Repeated).Part.Items[0] = scene.Placed{Form: quadrants(), At: geometry.Stretch(40, 20), Opacity: 0.5}
	info := forPress(t)
	d := readFileByQpdf(t, produceWith(t, []scene.Drawing{sheet}, info))
	if got := d.get(d.pages()[0], "Group", "CS"); got != "/DeviceCMYK" {
		t.Errorf("the page blends in %v", got)
	}
	bad := &object.Form{Width: 1, Height: 1, Resources: object.Dict{{"XObject", object.Dict{{"X", object.Dict{{"Subtype", object.Name("PS")}}}}}}}
	sheet.Items[1].(scene.Repeated).Part.Items[0] = scene.Placed{Form: bad, At: geometry.Stretch(40, 20), Opacity: 1}
	if _, err := build([]scene.Drawing{sheet}, info, true); err == nil || !strings.Contains(err.Error(), "item 2: PDF/X-4 does not allow this artwork: it holds PostScript") {
		t.Errorf("error %v", err)
	}
}

// What only helps the printer is declared as a legend, without a type; marks are printed
// matter and no step, as those of artwork. Source: the Arlington PDF Model, as above.
func TestLayersOfSheetsDeclareTheirGroups(t *testing.T) {
	sheet := sheetOf(scene.Place{At: lying(0, 0, 0)})
	for _, role := range scene.SheetRoles() {
		sheet.Items = append(sheet.Items, line(role, 0, 50, 50, 50))
	}
	d := readByQpdf(t, []scene.Drawing{sheet})
	found := 0
	for _, group := range d.get(d.root(), "OCProperties", "OCGs").([]any) {
		title := strings.TrimPrefix(d.get(group, "Name").(string), "u:")
		role := slices.IndexFunc(scene.SheetRoles(), func(r scene.Role) bool { return r.String() == title })
		if role < 0 {
			continue
		}
		found++
		metadata := d.get(group, "GTS_Metadata")
		if title == "PressMarks" {
			if metadata != nil {
				t.Errorf("marks declare %v", metadata)
			}
		} else if got := d.get(metadata, "GTS_ProcStepsGroup"); got != "/Legend" || len(keys(metadata)) != 1 {
			t.Errorf("%s declares %v", title, metadata)
		}
	}
	if found != len(scene.SheetRoles()) {
		t.Errorf("%d layers of sheets, want %d", found, len(scene.SheetRoles()))
	}
	space := d.get(d.pages()[0], "Resources", "ColorSpace", "PressMarks").([]any)
	if space[0] != "/Separation" || space[1] != "/All" {
		t.Errorf("marks are in %v", space)
	}
}

func TestBadPartIsNamed(t *testing.T) {
	for says, repeated := range map[string]scene.Repeated{
		"there is no part": {},
		"item 1 of the part: line on layer Cutting: width of 0 mm": {Part: &scene.Part{Role: scene.Cutting, Items: []scene.Item{scene.Stroke{Role: scene.Cutting}}}},
		"is itself repeated":   {Part: &scene.Part{Items: []scene.Item{scene.Repeated{}}}},
		"the path has no edge": {Part: &scene.Part{Clip: []geometry.Path{{}}}},
		"place: NaN":           {Part: &scene.Part{}, Places: []scene.Place{{At: geometry.Stretch(1, math.NaN())}}},
	} {
		sheet := sheetOf()
		sheet.Items = []scene.Item{repeated}
		if _, err := build([]scene.Drawing{sheet}, day, true); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("error %v, want one that says %q", err, says)
		}
	}
}
