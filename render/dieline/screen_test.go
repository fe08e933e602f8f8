package dieline

import (
	"math/rand/v2"
	"slices"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

// letters are heights of lettering in mm from far out to very near.
var letters = []float64{110, 55, 27, 15, 10, 5, 2, 0.5, 0.2}

func TestScreenLabelsKeepApart(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 9))
	for range 150 {
		laid := blank.Lay(geomtest.RandomBag(random))
		for _, letter := range letters {
			drawing := OnScreen(&laid, 0, letter)
			if err := drawing.Check(); err != nil {
				t.Fatal(err)
			}
			labelsApart(t, drawing, laid.Spec)
			for _, item := range drawing.Items {
				label, isLabel := item.(scene.Label)
				if isLabel && label.Size < 0.9*letter-1e-9 {
					t.Errorf("%q is %g mm high in lettering of %g mm", label.Text, label.Size, letter)
				}
			}
		}
	}
}

func TestScreenDrawsTheLinesOfTheFile(t *testing.T) {
	laid := blank.Lay(bag.Default())
	edges := func(drawing scene.Drawing, role scene.Role) (length float64) {
		for _, item := range drawing.Items {
			if stroke, isStroke := item.(scene.Stroke); isStroke && stroke.Role == role {
				length += stroke.Path.Length()
			}
		}
		return length
	}
	file := Sheets(&laid, "")[0]
	for _, letter := range letters {
		screen := OnScreen(&laid, 0, letter)
		roles := []scene.Role{scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Punching}
		if letter <= 10 {
			roles = append(roles, scene.Bleed, scene.ContentArea) // else too near to other lines
		}
		for _, role := range roles {
			if got, want := edges(screen, role), edges(file, role); got != want || want == 0 {
				t.Errorf("letter %g: %v lines of %g mm, want %g", letter, role, got, want)
			}
		}
		if screen.Media.Width() >= file.Media.Width() && letter <= 5 {
			t.Errorf("letter %g: the page is %g mm wide, no less than with a title block", letter, screen.Media.Width())
		}
	}
}

// At a usual zoom every dimension of the file stands on the screen, too.
func TestScreenSaysAllMeasures(t *testing.T) {
	laid := blank.Lay(bag.Default())
	texts := map[string]bool{}
	for _, item := range OnScreen(&laid, 0, 6).Items {
		if label, isLabel := item.(scene.Label); isLabel {
			texts[label.Text] = true
		}
	}
	for _, want := range []string{
		"W 240", "D/2 50", "blank width 699.5", "blank height 480", "standing height H 360", "T 50", "B 70",
		"flat-fold crease to top 310", "s 120", "drop 25", "Ø 5", "Front", "Back base flap", "grain", "G 20",
	} {
		if !texts[want] {
			t.Errorf("%q is missing; there is %v", want, texts)
		}
	}
}

func TestScreenSpeaksUnitsAndLanguages(t *testing.T) {
	laid := blank.Lay(bag.Default())
	screen := Screen{Letter: 5, Unit: geometry.Inch, Voice: scene.Spoken(func(text string) string { return "«" + text + "»" })}
	var texts []string
	for _, item := range screen.Draw(&laid, 0).Items {
		if label, isLabel := item.(scene.Label); isLabel {
			texts = append(texts, label.Text)
		}
	}
	// 240 mm are 240/25.4 = 9.4488 inches, 699.5 mm are 27.5394.
	for _, want := range []string{"«W» 9.449", "«blank width» 27.539", "«Front»", "«Right gusset base flap»", "«grain»"} {
		if !slices.Contains(texts, want) {
			t.Errorf("%q is missing; there is %q", want, texts)
		}
	}
}

func TestScreenDashesFollowTheLettering(t *testing.T) {
	laid := blank.Lay(bag.Default())
	dashes := func(screen Screen) map[scene.Role][]float64 {
		found := map[scene.Role][]float64{}
		for _, item := range screen.Draw(&laid, 0).Items {
			if stroke, isStroke := item.(scene.Stroke); isStroke && stroke.Dash != nil {
				found[stroke.Role] = stroke.Dash
			}
		}
		return found
	}
	near, far := dashes(Screen{Letter: 1}), dashes(Screen{Letter: 20})
	given := dashes(Screen{Letter: 20, Dash: 0.2})
	for _, role := range []scene.Role{scene.Creasing, scene.ReverseCreasing} {
		for i := range near[role] {
			if got, want := far[role][i], 20*near[role][i]; got-want > 1e-9 || want-got > 1e-9 {
				t.Errorf("%v: dash %d is %g mm at 20 times the lettering, want %g", role, i, got, want)
			}
			if got, want := given[role][i], near[role][i]; got-want > 1e-9 || want-got > 1e-9 {
				t.Errorf("%v: dash %d is %g mm by the given factor, want %g", role, i, got, want)
			}
		}
	}
	if len(near[scene.Creasing]) == len(near[scene.ReverseCreasing]) {
		t.Error("mountain and valley have patterns of one length")
	}
}

// Everything lies in the room that is set aside for it, or fitting would cut it off.
func TestScreenStaysInItsRoom(t *testing.T) {
	laid := blank.Lay(bag.Default())
	for _, letter := range letters[2:] {
		drawing := OnScreen(&laid, 0, letter)
		for _, item := range drawing.Items {
			var box geometry.Rect
			switch item := item.(type) {
			case scene.Stroke:
				box = item.Path.Bounds()
			case scene.Fill:
				box = item.Path.Bounds()
			case scene.Label:
				box = labelBox(item)
			}
			if !drawing.Media.Contains(box.Min) || !drawing.Media.Contains(box.Max) {
				t.Errorf("letter %g: %v reaches %v, outside of %v", letter, item, box, drawing.Media)
			}
		}
	}
}

func TestSampleShowsTheDashOfItsRole(t *testing.T) {
	box := geometry.RectAt(0, 0, 40, 12)
	for _, role := range scene.Roles()[1:] {
		items := Screen{Letter: 11}.Sample(role, box).Items
		if len(items) == 0 {
			t.Errorf("%v has no sample", role)
		}
		for _, item := range items {
			if item.Layer() != role {
				t.Errorf("the sample of %v is drawn as %v", role, item.Layer())
			}
		}
	}
}

// Far in, hatching must not become thousands of lines.
func TestHatchingIsBounded(t *testing.T) {
	laid := blank.Lay(bag.Default())
	if n := len(OnScreen(&laid, 0, 0.1).Items); n > 2000 {
		t.Errorf("%d items", n)
	}
}

func BenchmarkOnScreen(b *testing.B) {
	laid := blank.Lay(bag.Default())
	b.ReportAllocs()
	for b.Loop() {
		OnScreen(&laid, 0, 10)
	}
}
