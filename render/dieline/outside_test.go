package dieline

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

func labels(drawing scene.Drawing) []scene.Label {
	var list []scene.Label
	for _, item := range drawing.Items {
		if label, is := item.(scene.Label); is {
			list = append(list, label)
		}
	}
	return list
}

func texts(drawing scene.Drawing) []string {
	var list []string
	for _, label := range labels(drawing) {
		list = append(list, label.Text)
	}
	return list
}

// On the drawing of a printed bag no lettering stands on the blank, where artwork could
// be under it, and nothing is lost: each column and the grain are named beside it.
func TestNothingIsWrittenOnAPrintedBlank(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 11))
	specs := []bag.Spec{geomtest.WorkedExample()}
	for range 300 {
		specs = append(specs, geomtest.RandomBag(random))
	}
	for _, spec := range specs {
		spec.Print.Background = bag.Background{Black: 80}
		laid := blank.Lay(spec)
		for i, drawing := range Sheets(&laid, "2026-03-31") {
			printed := laid.Pieces[i].Box().Inset(-spec.Print.Bleed)
			for _, label := range labels(drawing) {
				if overlap(labelBox(label), printed) {
					t.Errorf("%q stands on the blank of %g × %g × %g", label.Text, spec.Body.Width, spec.Body.Gusset, spec.Body.Height)
				}
				if box := labelBox(label); !drawing.Media.Contains(box.Min) || !drawing.Media.Contains(box.Max) {
					t.Errorf("%q stands beyond the page", label.Text)
				}
			}
			said := texts(drawing)
			for _, panel := range laid.Pieces[i].Panels {
				if panel.Row == blank.RowBody && !slices.Contains(said, PanelName(panel.ID)) {
					t.Errorf("%s is not named", panel.ID)
				}
			}
			if !slices.Contains(said, "grain") {
				t.Error("the grain is not named")
			}
		}
	}
}

// A bag that is not printed keeps the names in its panels.
func TestBarePanelsHoldTheirNames(t *testing.T) {
	laid := blank.Lay(geomtest.WorkedExample())
	for _, label := range labels(Sheets(&laid, "")[0]) {
		if label.Text == "Front" && laid.Pieces[0].Box().Contains(label.At) {
			return
		}
	}
	t.Error("the front is not named on itself")
}

// Spacing and drop of the openings are measured beside a printed blank.
func TestOpeningsArePlacedBesideAPrintedBlank(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("front.svg", "front")}
	laid := blank.Lay(spec)
	said := texts(Sheets(&laid, "")[0])
	h := spec.Handle
	for _, want := range []string{
		"s " + geometry.FormatNumber(h.Spacing, 2), "drop " + geometry.FormatNumber(h.Drop, 2), "Ø " + geometry.FormatNumber(h.HoleDiameter, 2),
	} {
		if !slices.Contains(said, want) {
			t.Errorf("%q is not on the drawing: %q", want, said)
		}
	}
}

// Card and patch have outlines of different dashes, and the legend names both.
func TestPartsOnTheReverseAreToldApart(t *testing.T) {
	spec := bag.Default()
	spec.Handle.Kind = bag.HandleTwisted
	spec.Derive(func(path string) bool { return path == "handle.kind" })
	spec.Cards.Top = true
	laid := blank.Lay(spec)
	kinds := Behind(&laid.Pieces[0])
	if !slices.Contains(kinds, blank.GlueTopCard) || !slices.Contains(kinds, blank.GluePatch) {
		t.Fatalf("behind the blank are %q; the test needs a card and a patch", kinds)
	}
	if slices.Equal(behind[blank.GlueTopCard], behind[blank.GluePatch]) {
		t.Error("card and patch look alike")
	}
	legend := strings.Join(texts(Sheets(&laid, "")[0]), "\n")
	for _, want := range []string{"Top card: ", "Handle patch: "} {
		if !strings.Contains(legend, want) {
			t.Errorf("the legend does not say %q", want)
		}
	}
	for _, kind := range kinds {
		sample := Screen{Letter: 5}.SamplePart(kind, geometry.RectAt(0, 0, 40, 8))
		if stroke := sample.Items[0].(scene.Stroke); !slices.Equal(stroke.Dash, behind[kind]) {
			t.Errorf("the sample of %s has the dashes %v, want %v", kind, stroke.Dash, behind[kind])
		}
	}
}

// The width of a narrow seam flap stands inside of the picture, clear of the edge of the
// blank to which the flap reaches.
func TestNarrowDimensionsStayInside(t *testing.T) {
	laid := blank.Lay(bag.Default())
	for _, letter := range []float64{8, 12, 20} {
		drawing := OnScreen(&laid, 0, letter)
		for _, label := range labels(drawing) {
			if box := labelBox(label); label.Role == scene.Dimensions && box.Max.X > drawing.Media.Max.X {
				t.Errorf("letters of %g: %q ends at %g, the picture at %g", letter, label.Text, box.Max.X, drawing.Media.Max.X)
			}
			if strings.HasPrefix(label.Text, "G ") && labelBox(label).Max.X > laid.Pieces[0].Width {
				t.Errorf("letters of %g: %q runs over the line at the edge of the blank", letter, label.Text)
			}
		}
	}
}
