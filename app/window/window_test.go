package window

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/session"
	"gussetwright/app/settings"
	"gussetwright/app/steady"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
)

// opened returns the window on the start page, or on the project at path.
func opened(t *testing.T, path string) *Window {
	t.Helper()
	app := newApp(t)
	return openedIn(t, app, path, t.TempDir())
}

func openedIn(t *testing.T, app fyne.App, path, recovery string) *Window {
	t.Helper()
	set := settings.New(app.Preferences())
	set.SetAppearance(settings.Light)
	appearance.Wear(app, set)
	doc := document.New()
	// Artwork is never opened here: it would come while the test does something else.
	w := newWindow(app, set, doc, session.New(doc, session.Options{Recent: set, Recovery: recovery}), func(func()) {})
	w.saver.run = func(work, then func()) { work(); then() } // in its turn, for tests that look at files
	w.Show(path)
	w.window.Resize(fyne.NewSize(1440, 900))
	t.Cleanup(func() {
		w.keeper.timer.Stop()
		w.closeArtwork()
		w.blank.Close()
		w.folded.Close()
	})
	return w
}

func demoFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "demo.gusset")
	if err := os.WriteFile(path, assets.Demo, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// widen makes the bag of the window 10 mm wider, as one step.
func widen(w *Window) {
	spec := w.doc.State().Spec
	spec.Body.Width += 10
	w.doc.Set(spec)
}

// answer gives the answer of the notice bar with this label.
func answer(t *testing.T, w *Window, label string) {
	t.Helper()
	for _, button := range w.bar.Answers() {
		if button.Text == label {
			test.Tap(button)
			return
		}
	}
	t.Fatalf("the bar says %q and has no answer %q", w.bar.Text(), label)
}

func TestStartPageComesFirst(t *testing.T) {
	w := opened(t, "")
	if w.atDesk() || w.foot.Visible() {
		t.Error("the desk is shown before there is a bag")
	}
	w.openDemo()
	if !w.atDesk() || !w.foot.Visible() || w.doc.State().Spec.Name != "Quillmoor Tea House, gift bag" {
		t.Errorf("after opening the demo: desk %v, bag %q", w.atDesk(), w.doc.State().Spec.Name)
	}
	if w.file.Path() != "" {
		t.Error("the demo has a file that could be saved over")
	}
}

func TestArgumentIsOpened(t *testing.T) {
	path := demoFile(t)
	w := opened(t, path)
	if !w.atDesk() || w.file.Path() != path || w.window.Title() != "demo – Gussetwright" {
		t.Errorf("desk %v, path %q, title %q", w.atDesk(), w.file.Path(), w.window.Title())
	}
	if recent := w.set.Recent(); len(recent) != 1 || recent[0] != path {
		t.Errorf("recent files %q", recent)
	}
}

func TestMissingArgumentIsToldInTheWindow(t *testing.T) {
	w := opened(t, filepath.Join(t.TempDir(), "gone.gusset"))
	if !strings.Contains(w.bar.Text(), "gone.gusset") || w.atDesk() {
		t.Errorf("the bar says %q", w.bar.Text())
	}
}

func TestUndoIsNamedInTheMenu(t *testing.T) {
	w := opened(t, demoFile(t))
	if !w.menu.undo.Disabled {
		t.Error("there is something to undo before anything was done")
	}
	widen(w)
	if got := w.menu.undo.Label; got != "Undo: Face width 190 mm → 200 mm" || w.menu.undo.Disabled {
		t.Errorf("the menu says %q", got)
	}
	if got := w.window.Title(); got != "demo* – Gussetwright" {
		t.Errorf("the title is %q", got)
	}
	w.undo()
	if got := w.menu.redo.Label; got != "Redo: Face width 190 mm → 200 mm" {
		t.Errorf("the menu says %q", got)
	}
	if w.doc.State().Spec.Body.Width != 190 {
		t.Error("undo did not undo")
	}
	w.redo()
	if w.doc.State().Spec.Body.Width != 200 {
		t.Error("redo did not redo")
	}
}

func TestNothingIsClosedUnsaved(t *testing.T) {
	w := opened(t, demoFile(t))
	closed := false
	w.window.SetOnClosed(func() { closed = true })
	widen(w)
	w.close()
	if closed || !strings.Contains(w.bar.Text(), "Save the changes") {
		t.Fatalf("closed %v, the bar says %q", closed, w.bar.Text())
	}
	w.escape()
	if closed || w.bar.Visible() {
		t.Fatal("escape did not keep the window open")
	}
	w.close()
	answer(t, w, "Save")
	if !closed {
		t.Error("the window stays open after saving")
	}
	saved, err := project.Open(w.file.Path())
	if err != nil || saved.Spec.Body.Width != 200 {
		t.Errorf("saved %g, %v", saved.Spec.Body.Width, err)
	}
}

func TestSavedByAnotherIsNotReplacedSilently(t *testing.T) {
	path := demoFile(t)
	w := opened(t, path)
	widen(w)
	other, err := project.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	other.Spec.Body.Height = 300
	if err := project.Save(path, other); err != nil {
		t.Fatal(err)
	}
	w.save()
	if w.bar.Text() == "" || len(w.bar.Answers()) != 4 {
		t.Fatalf("the bar says %q", w.bar.Text())
	}
	answer(t, w, "Replace it")
	if saved, _ := project.Open(path); saved.Spec.Body.Width != 200 || saved.Spec.Body.Height != 265 {
		t.Errorf("saved %+v", saved.Spec.Body)
	}
}

func TestDropOpensAProject(t *testing.T) {
	w := opened(t, "")
	w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI("/somewhere/letter.docx")})
	if !strings.Contains(w.bar.Text(), "letter.docx") {
		t.Errorf("the bar says %q", w.bar.Text())
	}
	path := demoFile(t)
	w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
	if w.file.Path() != path {
		t.Errorf("opened %q, want %q", w.file.Path(), path)
	}
}

func TestSaveAsAsksBeforeReplacing(t *testing.T) {
	w := opened(t, demoFile(t))
	folder := t.TempDir()
	taken := filepath.Join(folder, "taken.gusset")
	if err := os.WriteFile(taken, []byte("somebody's work"), 0o644); err != nil {
		t.Fatal(err)
	}
	question := askFile{window: w, ending: projectEnding, then: func(path string) { w.saved(w.file.SaveAs(path), func() {}) }}
	question.ask(folder, "taken")
	question.confirm()
	if data, _ := os.ReadFile(taken); string(data) != "somebody's work" || !strings.Contains(w.bar.Text(), "taken.gusset") {
		t.Fatalf("the file holds %q, the bar says %q", data, w.bar.Text())
	}
	answer(t, w, "Replace it")
	if _, err := project.Open(taken); err != nil || w.file.Path() != taken {
		t.Errorf("saved to %q, %v", w.file.Path(), err)
	}
}

func TestCrashIsRecovered(t *testing.T) {
	app, recovery := newApp(t), t.TempDir()
	first := openedIn(t, app, demoFile(t), recovery)
	widen(first)
	first.keeper.keep()
	// A copy of the recovery folder stands for the files that a crash leaves: the
	// first program still holds its own.
	left := filepath.Join(t.TempDir(), "left")
	if err := os.CopyFS(left, os.DirFS(recovery)); err != nil {
		t.Fatal(err)
	}
	second := openedIn(t, newApp(t), "", left)
	if !strings.Contains(second.bar.Text(), "without saving demo") {
		t.Fatalf("the bar says %q", second.bar.Text())
	}
	answer(t, second, "Take it up again")
	if state := second.doc.State(); state.Spec.Body.Width != 200 || !state.Dirty {
		t.Errorf("restored %g mm, dirty %v", state.Spec.Body.Width, state.Dirty)
	}
}

// A change to a list has no values to name.
func TestUndoOfAList(t *testing.T) {
	w := opened(t, demoFile(t))
	spec := w.doc.State().Spec
	spec.Family = []bag.Size{spec.Scaled("Small", 120)}
	w.doc.Set(spec)
	if got := w.menu.undo.Label; got != "Undo: sizes of the family" {
		t.Errorf("the menu says %q", got)
	}
}

func TestStepsHelpAndTourAreReachedByKey(t *testing.T) {
	w := opened(t, demoFile(t))
	w.goToStep(5)
	if w.steps.Selected() != 4 {
		t.Errorf("step %d is chosen, want 4", w.steps.Selected())
	}
	for range 4 {
		w.nextStep(1)
	}
	if w.steps.Selected() != 7 {
		t.Errorf("step %d is chosen, want the last", w.steps.Selected())
	}
	w.showHelp()
	if w.atDesk() {
		t.Error("help is not shown")
	}
	w.escape()
	if !w.atDesk() {
		t.Error("escape does not leave the help page")
	}
	w.startTour()
	if !w.tour.Visible() {
		t.Error("the tour is not shown")
	}
	w.tour.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.tour.Visible() {
		t.Error("escape does not leave the tour")
	}
}

func TestUnitsReachEveryPart(t *testing.T) {
	w := opened(t, demoFile(t))
	for _, item := range w.menu.units().ChildMenu.Items {
		if item.Label == "Inches" {
			item.Action()
		}
	}
	if !strings.Contains(w.foot.Text, "23.209 × 15.059 in") {
		t.Errorf("the status line says %q", w.foot.Text)
	}
}

// On a small screen the button that writes the files stays within reach: the step
// scrolls instead of running over the status line.
func TestFilesStepKeepsItsButtonInSight(t *testing.T) {
	w := opened(t, demoFile(t))
	w.window.Resize(fyne.NewSize(1024, 674))
	w.goToStep(8)
	driver := fyne.CurrentApp().Driver()
	button := w.files.Button()
	foot := driver.AbsolutePositionForObject(w.foot).Y
	if bottom := driver.AbsolutePositionForObject(button).Y + button.Size().Height; bottom > foot {
		t.Errorf("the button ends at %g, below %g", bottom, foot)
	}
	for _, object := range test.LaidOutObjects(w.steps.Page()) {
		scroll, ok := object.(*steady.Scroll)
		if !ok {
			continue
		}
		if scroll.Content.MinSize().Height <= scroll.Size().Height {
			t.Error("the step is not higher than its room, so this test shows nothing")
		}
		if end := driver.AbsolutePositionForObject(scroll).Y + scroll.Size().Height; end > driver.AbsolutePositionForObject(button).Y {
			t.Errorf("what scrolls ends at %g, under the button", end)
		}
		return
	}
	t.Fatal("the step Files has no scroll")
}

// Text sizes that follow each other faster than the window is drawn cost one layout.
func TestTextSizesAtOnceAreLaidOutOnce(t *testing.T) {
	w := opened(t, demoFile(t))
	worn := 0
	w.app.Settings().AddListener(func(fyne.Settings) { worn++ })
	size, before := theme.TextSize(), w.set.TextScale()
	w.largerText()
	w.largerText()
	w.smallerText()
	w.largerText()
	catchUp()
	if worn != 1 {
		t.Errorf("the theme was put on %d times, want once", worn)
	}
	if got, want := w.set.TextScale(), before+2*textStep; math.Abs(got-want) > 1e-9 {
		t.Errorf("the scale of the text is %g, want %g", got, want)
	}
	if got := theme.TextSize(); got <= size {
		t.Errorf("letters are %g high, were %g", got, size)
	}
}
