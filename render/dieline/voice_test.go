package dieline

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
	"gussetwright/render/scene/scenetest"
)

// lettered returns the labels of a drawing.
func lettered(drawing scene.Drawing) []scene.Label {
	var labels []scene.Label
	for _, item := range drawing.Items {
		if label, is := item.(scene.Label); is {
			labels = append(labels, label)
		}
	}
	return labels
}

// said returns a text without what is the same in every language: names of layers and the
// date.
func said(text string) string {
	for _, role := range scene.AllRoles() {
		text = strings.TrimPrefix(text, role.String()+": ")
	}
	return strings.ReplaceAll(text, "2026-03-31", "")
}

var latin, pointed = regexp.MustCompile(`[A-Za-z]`), regexp.MustCompile(`\d\.\d`)

// On files of any bag every text and number is asked of the voice.
func TestEveryTextIsSaidByTheVoice(t *testing.T) {
	random := rand.New(rand.NewPCG(61, 62))
	voice, commas := scenetest.Foreign(), 0
	for round := range 300 {
		spec := geomtest.RandomBag(random)
		spec.Name, spec.Handle.Eyelets = "", round%3 == 0
		if round%2 == 0 {
			spec.Print.Background = bag.Background{Cyan: 30}
		}
		laid := blank.Lay(spec)
		for _, drawing := range append(SheetsIn(&laid, "2026-03-31", voice), Templates(&laid, voice)...) {
			if latin.MatchString(drawing.Title) {
				t.Errorf("the title is %q", drawing.Title)
			}
			for _, label := range lettered(drawing) {
				text := said(label.Text)
				if latin.MatchString(text) || pointed.MatchString(text) {
					t.Fatalf("%q is not said in the language of the reader", label.Text)
				}
				if strings.Contains(text, ",") {
					commas++
				}
			}
		}
	}
	if commas < 1000 {
		t.Errorf("only %d texts with a comma were looked at", commas)
	}
}

// Long words neither run into each other nor out of the title block or off the page, and
// every letter has its glyph. What has a name in English has one in longer words.
func TestLongWordsKeepTheirPlace(t *testing.T) {
	for _, size := range [][3]float64{{190, 95, 265}, {240, 100, 360}, {320, 120, 410}, {160, 70, 250}, {450, 150, 400}} {
		for _, handle := range []bag.HandleKind{bag.HandleRope, bag.HandleTape, bag.HandleHandHole, bag.HandleTwisted} {
			for _, background := range []float64{0, 30} {
				spec := bag.Default()
				spec.Body.Width, spec.Body.Gusset, spec.Body.Height = size[0], size[1], size[2]
				spec.Handle.Kind, spec.Print.Background.Cyan = handle, background
				spec.Derive(func(string) bool { return false })
				laid := blank.Lay(spec)
				english := SheetsIn(&laid, "2026-03-31", nil)
				for i, drawing := range SheetsIn(&laid, "2026-03-31", scenetest.Foreign()) {
					labelsApart(t, drawing, spec)
					inTitleBlock(t, drawing)
					if got, want := len(lettered(drawing)), len(lettered(english[i])); got != want {
						t.Errorf("%g × %g × %g %s: %d texts in long words, %d in English", size[0], size[1], size[2], handle, got, want)
					}
				}
			}
		}
	}
}

// inTitleBlock checks that what stands below the drawing stands in the frame of the title
// block, and all of it on the page.
func inTitleBlock(t *testing.T, drawing scene.Drawing) {
	t.Helper()
	var frame geometry.Rect
	for _, item := range drawing.Items {
		if stroke, is := item.(scene.Stroke); is && stroke.Role == scene.Legend && stroke.Width == 2*scene.Legend.Style().Width {
			frame = stroke.Path.Bounds()
		}
	}
	inside := 0
	for _, label := range lettered(drawing) {
		box := labelBox(label)
		if !drawing.Media.Contains(box.Min) || !drawing.Media.Contains(box.Max) {
			t.Errorf("%q reaches %v, off the page %v", label.Text, box, drawing.Media)
		}
		if label.At.Y > frame.Max.Y {
			continue
		}
		inside++
		if !frame.Contains(box.Min) || !frame.Contains(box.Max) {
			t.Errorf("%q reaches %v, out of the title block %v", label.Text, box, frame)
		}
	}
	if inside < 15 {
		t.Errorf("%d texts in the title block", inside)
	}
}

// A drop whose name would run off its face in longer words is a number alone; in English
// it has its name.
func TestLongNameOfADropStaysOnItsFace(t *testing.T) {
	spec := bag.OfSize(160, 70, 230)
	spec.Handle.Kind = bag.HandleTape
	spec.Derive(func(string) bool { return false })
	laid := blank.Lay(spec)
	has := func(text string, drawing scene.Drawing) bool {
		for _, label := range lettered(drawing) {
			if label.Role == scene.Dimensions && label.Text == text {
				return true
			}
		}
		return false
	}
	drop := geometry.FormatNumber(spec.Handle.Drop, 2)
	if !has("drop "+drop, SheetsIn(&laid, "", nil)[0]) {
		t.Errorf("in English there is no drop %s", drop)
	}
	german := scene.Spoken(func(english string) string { return strings.Replace(english, "drop", "Abstand oben", 1) })
	if !has(drop, SheetsIn(&laid, "", german)[0]) {
		t.Errorf("in long words there is no %s", drop)
	}
}
