package status_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/settings"
	"gussetwright/app/status"
	"gussetwright/app/words"
	"gussetwright/geometry"
)

func TestTextStatesTheBag(t *testing.T) {
	test.NewTempApp(t)
	doc := document.New()
	want := "Blank 699.5 × 480 mm  ·  1-up on 1000 × 700 mm, gripper on the long edge, waste 52 %  ·  bag 73 g  ·  saved"
	if got := status.Text(doc.State(), geometry.Millimetre, true); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	spec := doc.State().Spec
	spec.Body.Width = 420
	doc.Set(spec)
	if got := status.Text(doc.State(), geometry.Inch, true); !strings.Contains(got, "Two pieces of 21.24 × 18.898 in") {
		t.Errorf("got %s", got)
	}
	spec.Body.Width = -1
	doc.Set(spec)
	if got := status.Text(doc.State(), geometry.Millimetre, true); !strings.HasPrefix(got, "Not drawn: Face width W is -1 mm: less than the least, 30 mm") {
		t.Errorf("got %s", got)
	}
}

// A bag that has no file was never saved, even where nothing was changed since it was begun.
func TestABagWithoutAFileIsNotSaved(t *testing.T) {
	app := test.NewTempApp(t)
	doc, hasFile := document.New(), false
	line := status.New(doc, settings.New(app.Preferences()))
	line.AskForFile(func() bool { return hasFile })
	if !strings.HasSuffix(line.Text, "  ·  not saved yet") {
		t.Errorf("the line says %s", line.Text)
	}
	spec := doc.State().Spec
	spec.Body.Height += 10
	if doc.Set(spec); !strings.HasSuffix(line.Text, "  ·  not saved") {
		t.Errorf("changed it says %s", line.Text)
	}
	hasFile = true
	if doc.Load(doc.Project()); !strings.HasSuffix(line.Text, "  ·  saved") {
		t.Errorf("with a file it says %s", line.Text)
	}
}

func TestLineFollowsUnitAndDocument(t *testing.T) {
	app := test.NewTempApp(t)
	doc, set := document.New(), settings.New(app.Preferences())
	line := status.New(doc, set)
	set.SetUnit(geometry.Centimetre)
	if !strings.Contains(line.Text, "69.95 × 48 cm") {
		t.Errorf("the line says %s", line.Text)
	}
	spec := doc.State().Spec
	spec.Body.Height = 400
	doc.Set(spec)
	if !strings.Contains(line.Text, "69.95 × 52 cm") || !strings.HasSuffix(line.Text, "not saved") {
		t.Errorf("the line says %s", line.Text)
	}
}

// Numbers stand as the language writes them.
func TestTextInGerman(t *testing.T) {
	test.NewTempApp(t)
	speak := func(language string) {
		if err := words.Load(language); err != nil {
			t.Fatal(err)
		}
	}
	speak("de")
	t.Cleanup(func() { speak("en") })
	doc := document.New()
	if got := status.Text(doc.State(), geometry.Millimetre, true); !strings.HasPrefix(got, "Zuschnitt 699,5 × 480 mm") {
		t.Errorf("got %s", got)
	}
	spec := doc.State().Spec
	spec.Body.Width = 29.5
	doc.Set(spec)
	for unit, want := range map[geometry.Unit]string{geometry.Millimetre: " 29,5 mm: ", geometry.Inch: " 1,1614173 in: "} {
		if got := status.Text(doc.State(), unit, true); !strings.Contains(got, want) {
			t.Errorf("got %s, want %q in it", got, want)
		}
	}
}
