package dieline

import (
	"bytes"
	"math/rand/v2"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

func sheets(spec bag.Spec) (blank.Blank, []scene.Drawing) {
	laid := blank.Lay(spec)
	return laid, Sheets(&laid, "2026-03-31")
}

func TestGolden(t *testing.T) {
	spec := geomtest.WorkedExample()
	_, drawings := sheets(spec)
	var out bytes.Buffer
	if err := svg.Write(&out, drawings); err != nil {
		t.Fatal(err)
	}
	geomtest.Golden(t, "dieline/worked-example.svg", out.Bytes())
}

// What a machine follows lies on the paper: nothing of the legend or the title
// block may be cut, creased, punched or glued.
func TestToolsStayOnThePaper(t *testing.T) {
	random := rand.New(rand.NewPCG(15, 16))
	for range 200 {
		spec := geomtest.RandomBag(random)
		if spec.Handle.Kind == bag.HandleHandHole && spec.Handle.HandHoleWidth > spec.Body.Width {
			continue // cannot be made, and its finding says so
		}
		laid, drawings := sheets(spec)
		for i, drawing := range drawings {
			if err := drawing.Check(); err != nil {
				t.Fatal(err)
			}
			paper := laid.Pieces[i].Box()
			for _, item := range drawing.Items {
				stroke, isStroke := item.(scene.Stroke)
				if !isStroke {
					continue
				}
				box := stroke.Path.Bounds()
				switch stroke.Role {
				case scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Gluing:
					if !paper.Contains(box.Min) || !paper.Contains(box.Max) {
						t.Fatalf("%v reaches %v, outside of the paper %v", stroke.Role, box, paper)
					}
				}
				if !drawing.Media.Contains(box.Min) || !drawing.Media.Contains(box.Max) {
					t.Fatalf("%v reaches %v, outside of the page %v", stroke.Role, box, drawing.Media)
				}
			}
		}
	}
}

// Every cut, crease and hole of the blank is drawn once.
func TestNothingIsLeftOut(t *testing.T) {
	laid, drawings := sheets(bag.Default())
	count := map[scene.Role]int{}
	for _, item := range drawings[0].Items {
		if stroke, isStroke := item.(scene.Stroke); isStroke {
			count[stroke.Role] += stroke.Path.Len()
		}
	}
	want := map[scene.Role]int{scene.Punching: 2 * len(laid.Pieces[0].Holes)}
	for _, line := range laid.Pieces[0].Lines {
		switch {
		case line.Kind == blank.Cut:
			want[scene.Cutting]++
		case line.Fold == blank.Valley:
			want[scene.ReverseCreasing]++
		default:
			want[scene.Creasing]++
		}
	}
	for role, edges := range want {
		if count[role] != edges {
			t.Errorf("%v: %d edges drawn, want %d", role, count[role], edges)
		}
	}
}

// Lettering must not run into other lettering on bags of usual sizes.
func TestLabelsKeepApart(t *testing.T) {
	for _, size := range [][3]float64{{190, 95, 265}, {240, 100, 360}, {320, 120, 410}, {110, 60, 160}, {160, 70, 250}, {450, 150, 400}} {
		for _, base := range []bag.Base{bag.BaseBlock, bag.BaseSlotted, bag.BasePinch} {
			for _, handle := range []bag.HandleKind{bag.HandleRope, bag.HandleTape, bag.HandleHandHole, bag.HandleTwisted} {
				spec := bag.Default()
				spec.Body.Width, spec.Body.Gusset, spec.Body.Height = size[0], size[1], size[2]
				spec.Body.Base, spec.Handle.Kind = base, handle
				spec.Derive(func(string) bool { return false })
				_, drawings := sheets(spec)
				for _, drawing := range drawings {
					labelsApart(t, drawing, spec)
				}
			}
		}
	}
}

func labelsApart(t *testing.T, drawing scene.Drawing, spec bag.Spec) {
	t.Helper()
	var labels []scene.Label
	for _, item := range drawing.Items {
		if label, isLabel := item.(scene.Label); isLabel {
			labels = append(labels, label)
		}
	}
	for i, a := range labels {
		for _, b := range labels[i+1:] {
			if overlap(inked(a), inked(b)) {
				t.Errorf("%q runs into %q on %g × %g × %g %s %s", a.Text, b.Text,
					spec.Body.Width, spec.Body.Gusset, spec.Body.Height, spec.Body.Base, spec.Handle.Kind)
			}
		}
	}
}

// inked is the box of a label without the room above small letters.
func inked(l scene.Label) geometry.Rect {
	l.Size *= 0.95
	return labelBox(l)
}

func overlap(a, b geometry.Rect) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

func TestTitleBlockSaysTheSizeInWords(t *testing.T) {
	spec := bag.Default()
	spec.Name = "Quillmoor Tea House"
	_, drawings := sheets(spec)
	var text strings.Builder
	for _, item := range drawings[0].Items {
		if label, isLabel := item.(scene.Label); isLabel {
			text.WriteString(label.Text + "\n")
		}
	}
	for _, want := range []string{
		"Quillmoor Tea House", "face width W 240 × gusset depth D 100 × standing height H 360 mm",
		"170 g/m²", "2026-03-31", "100 mm: measure this bar", "Scale 1:1", "standing height H 360", "D/2 − r 49.5",
	} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("the drawing does not say %q", want)
		}
	}
}

func TestScaleBarIs100(t *testing.T) {
	_, drawings := sheets(bag.Default())
	left, right := 0.0, 0.0
	for _, item := range drawings[0].Items {
		stroke, isStroke := item.(scene.Stroke)
		if !isStroke || stroke.Path.Len() != 4 || stroke.Role != scene.Legend {
			continue
		}
		if box := stroke.Path.Bounds(); box.Width() == 10 {
			if left == 0 || box.Min.X < left {
				left = box.Min.X
			}
			right = max(right, box.Max.X)
		}
	}
	if right-left != 100 {
		t.Errorf("the scale bar is %g mm long, want 100", right-left)
	}
}

func TestHatchStaysInside(t *testing.T) {
	shape := geometry.Polygon(geometry.Vec2{}, geometry.Vec2{X: 60}, geometry.Vec2{X: 40, Y: 30}, geometry.Vec2{X: 10, Y: 30})
	lines := hatch(shape, hatchSpacing)
	if len(lines) < 10 {
		t.Fatalf("%d hatch lines", len(lines))
	}
	for _, line := range lines {
		if middle := line.From.Mid(line.To); !shape.Contains(middle) {
			t.Errorf("the hatch line %v lies outside", line)
		}
	}
	box := geometry.RectAt(20, 10, 10, 10)
	for _, line := range lines {
		for _, part := range outside(line, []geometry.Rect{box}) {
			if middle := part.From.Mid(part.To); box.Inset(0.01).Contains(middle) {
				t.Errorf("hatching runs through the lettering at %v", middle)
			}
		}
	}
}

func BenchmarkSheets(b *testing.B) {
	laid := blank.Lay(bag.Default())
	b.ReportAllocs()
	for b.Loop() {
		Sheets(&laid, "2026-03-31")
	}
}

// The page of a template is the piece and its bleed, and nothing stands beyond it:
// what is drawn on it fits the blank.
func TestTemplatesHoldNothingBeyondTheBleed(t *testing.T) {
	spec := geomtest.WorkedExample()
	laid := blank.Lay(spec)
	page := Templates(&laid, nil)[0]
	if want := geometry.RectAt(-3, -3, 706, 486); page.Media != want || page.Bleed != want || page.Trim != laid.Pieces[0].Box() {
		t.Errorf("page %v, bleed %v, trim %v", page.Media, page.Bleed, page.Trim)
	}
	roles := page.ByRole()
	if len(roles[scene.Dimensions]) > 0 {
		t.Errorf("%d dimensions on a template", len(roles[scene.Dimensions]))
	}
	for _, role := range []scene.Role{scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Gluing, scene.Bleed, scene.ContentArea, scene.Punching, scene.Legend} {
		if len(roles[role]) == 0 {
			t.Errorf("nothing on layer %s", role)
		}
	}
	grown := page.Media.Inset(-1e-9)
	for _, item := range page.Items {
		if stroke, is := item.(scene.Stroke); is && (!grown.Contains(stroke.Path.Bounds().Min) || !grown.Contains(stroke.Path.Bounds().Max)) {
			t.Errorf("a line on layer %s reaches %v", stroke.Role, stroke.Path.Bounds())
		}
	}
}

// The title block says a size that belongs to the style: a new carrying style must not
// pass for one with a patch.
func TestEveryHandleHasItsText(t *testing.T) {
	field, _ := bag.FieldAt("handle.kind")
	for _, option := range field.Options {
		d := drafter{spec: bag.Default(), voice: scene.English()}
		h := &d.spec.Handle
		h.Kind = bag.HandleKind(option)
		if text := d.handleText().String(); strings.Contains(text, "patch") != h.Kind.HasPatch() || h.Kind.HasSlits() != strings.Contains(text, "slits") {
			t.Errorf("%s is said to be carried by a %s", option, text)
		}
	}
}
