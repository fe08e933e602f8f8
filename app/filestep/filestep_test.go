package filestep

import (
	"errors"
	"net/url"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/jobs"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
)

// long is more patience than a test has.
const long = time.Hour

// said returns what a list says, a line each.
func said(l *list) string {
	var lines []string
	for _, line := range l.lines {
		if line.Text() != "" {
			lines = append(lines, line.Text())
		}
	}
	return strings.Join(lines, "\n")
}

func TestLookInMarkup(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	geomtest.Golden(t, "filestep/first.xml", []byte(test.RenderToMarkup(r.window.Canvas())))
	r.change(func(s *bag.Spec) { s.Handle.Drop, s.Body.Seams = 4, bag.SeamsTwo })
	r.do()
	r.untick("svg", "png")
	r.running.begin()
	r.running.reveal()
	r.running.tell(0.4, "Picture")
	r.result.fail(jobs.Result{Paths: []string{"/files/bags/tea-house.svg"}, Err: &os.PathError{Op: "write", Path: "/files/bags/tea-house-1-blank.png", Err: errors.New("no space left on device")}})
	geomtest.Golden(t, "filestep/everything.xml", []byte(test.RenderToMarkup(r.window.Canvas())))
}

func TestWhenNothingCanBeWritten(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	r.untick()
	if !r.button.Disabled() || said(r.list) != "Nothing is ticked." {
		t.Errorf("without ticks: %q", said(r.list))
	}
	r.untick("svg")
	r.folder.entry.SetText("  ")
	if !r.button.Disabled() || said(r.list) != "Enter a folder." {
		t.Errorf("without a folder: %q", said(r.list))
	}
	r.folder.entry.SetText("/files/bags")
	r.change(func(s *bag.Spec) { s.Body.Width = 5 })
	if !r.button.Disabled() || r.warning.Severity() != check.Error || !strings.Contains(r.warning.Text(), "cannot be drawn") {
		t.Errorf("with a bag that cannot be drawn: %q", r.warning.Text())
	}
	r.doc.Undo()
	if r.button.Disabled() || r.warning.Text() != "" {
		t.Errorf("after undoing: %q", r.warning.Text())
	}
}

func TestRemembersFolderAndTicks(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	r.untick("dxf")
	r.folder.entry.SetText("/files/others")
	again := newStep(r.doc, func() string { return "x" }, r.set, r.window, jobs.New(export.Write), r.surroundings)
	defer again.Close()
	chosen := again.kinds.chosen()
	if len(chosen) != 1 || chosen[0].Name != "dxf" || again.folder.entry.Text != "/files/others" {
		t.Errorf("remembered %v, %q", chosen, again.folder.entry.Text)
	}
}

// A party is ticked as a whole, its kinds of a family where there is one.
func TestTicksForAParty(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	r.untick("proof")
	names := func() (names []string) {
		for _, kind := range r.kinds.chosen() {
			names = append(names, kind.Name)
		}
		return names
	}
	client := r.kinds.parties[slices.Index(export.Parties(), "For the client")]
	for _, step := range []struct {
		button string
		want   []string
	}{
		{"Tick all", []string{"proof"}},
		{"Tick none", []string{"proof", "page", "pictures"}},
		{"Tick all", nil},
	} {
		if client.turn.Text != step.button || !slices.Equal(names(), step.want) {
			t.Errorf("the button says %q and %q are ticked, want %q and %q", client.turn.Text, names(), step.button, step.want)
		}
		test.Tap(client.turn)
	}
	for _, p := range r.kinds.parties {
		if len(p.kinds) == 0 {
			t.Error("a party for whom there is nothing")
		}
	}
}

// The button keeps up with letters that grew while the step was out of sight.
func TestLettersGrowWhileHidden(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	before := r.button.Size().Height
	r.Hide()
	r.app.Settings().SetTheme(largeTheme{r.app.Settings().Theme()})
	r.Show()
	r.Refresh()
	if got := r.button.Size().Height; got <= before {
		t.Errorf("the button is %g high, was %g with smaller letters", got, before)
	}
}

// largeTheme has letters of twice the size.
type largeTheme struct{ fyne.Theme }

func (l largeTheme) Size(name fyne.ThemeSizeName) float32 { return 2 * l.Theme.Size(name) }

func TestHiddenStepWaits(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	before, shown := r.picture.last, r.picture.words.Text()
	r.Hide()
	spec := r.doc.State().Spec
	spec.Body.Width += 30
	r.doc.Set(spec)
	if r.picture.last != before || r.picture.words.Text() != shown {
		t.Error("a hidden step follows changes")
	}
	r.Show()
	r.do()
	if r.picture.last == before || r.picture.words.Text() == shown {
		t.Error("the step shows an old bag when it comes back")
	}
}

func TestListFollowsTheProject(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	r.untick("png")
	r.project = "Tea: house"
	r.change(func(s *bag.Spec) { s.Body.Seams = bag.SeamsTwo })
	if got, want := said(r.list), "• Tea- house-1-blank.png\n• Tea- house-2-blank.png"; got != want {
		t.Errorf("the list says\n%s, want\n%s", got, want)
	}
}

// Shown again, the step looks anew which files there are.
func TestShowLooksAtTheDisk(t *testing.T) {
	folder := t.TempDir()
	r := newRig(t, folder, export.Write, long)
	r.untick("svg")
	if err := os.WriteFile(filepath.Join(folder, "tea-house.svg"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	r.Hide()
	r.Show()
	if !strings.Contains(said(r.list), "replaces") {
		t.Errorf("the list says %q", said(r.list))
	}
}

func TestPictureFollowsTheBag(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	want := func(count int, caption string) {
		t.Helper()
		if len(r.picture.pictures.Objects) != count || r.picture.words.Text() != caption {
			t.Errorf("%d pictures, %q; want %d, %q", len(r.picture.pictures.Objects), r.picture.words.Text(), count, caption)
		}
	}
	want(1, "One piece, 699.5 × 480 mm")
	r.set.SetUnit(geometry.Centimetre)
	want(1, "One piece, 69.95 × 48 cm")
	r.set.SetUnit(geometry.Inch)
	want(1, "One piece, 27.539 × 18.898 in")
	r.set.SetUnit(geometry.Millimetre)
	r.change(func(s *bag.Spec) { s.Body.Seams = bag.SeamsTwo })
	r.do()
	want(2, "Two pieces, the first 359.5 × 480 mm")
	spec := r.doc.Project().Spec
	spec.Body.Height = 300
	r.doc.Drag(spec)
	want(2, "Two pieces, the first 359.5 × 480 mm") // not while it is dragged
	r.doc.Drop()
	r.do()
	want(2, "Two pieces, the first 359.5 × 420 mm")
	r.doc.MarkSaved()
	if len(r.queue) != 0 {
		t.Error("drawn again for nothing")
	}
}

// Everything can be reached and used without a mouse.
func TestKeyboard(t *testing.T) {
	r := newRig(t, t.TempDir(), export.Write, long)
	r.untick("svg")
	canvas := r.window.Canvas()
	var reached []fyne.Focusable
	want := []fyne.Focusable{}
	for _, p := range r.kinds.parties {
		want = append(want, p.turn)
		for _, i := range p.kinds {
			if !r.kinds.all[i].OfFamily { // the bag has none
				want = append(want, r.kinds.checks[i])
			}
		}
	}
	for range len(want) + 3 {
		canvas.FocusNext()
		reached = append(reached, canvas.Focused())
	}
	want = append(want, r.folder.entry, r.folder.browse, r.button)
	if !slices.Equal(reached, want) {
		t.Fatalf("reached %v, want %v", reached, want)
	}
	canvas.Focus(r.kinds.checks[0])
	test.Type(canvas.Focused(), " ")
	if !r.kinds.checks[0].Checked {
		t.Error("the space bar ticks nothing")
	}
	r.untick("svg")
	canvas.Focus(r.button)
	canvas.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	r.finish()
	if !r.result.Visible() {
		t.Fatal("the space bar writes nothing")
	}
	canvas.FocusNext()
	if canvas.Focused() != r.result.open {
		t.Errorf("after the button comes %v", canvas.Focused())
	}
}

func TestBrowse(t *testing.T) {
	folder := t.TempDir()
	r := newRig(t, filepath.Join(folder, "not there", "yet"), export.Write, long)
	r.window.Resize(fyne.NewSize(900, 700))
	test.Tap(r.folder.browse)
	if r.window.Canvas().Overlays().Top() == nil {
		t.Fatal("no dialog")
	}
	r.folder.chosen(nil, nil) // cancelled
	if got := r.folder.path(); got != filepath.Join(folder, "not there", "yet") {
		t.Errorf("after cancelling: %q", got)
	}
	place, err := storage.ListerForURI(storage.NewFileURI(folder))
	if err != nil {
		t.Fatal(err)
	}
	r.folder.chosen(place, nil)
	if got := r.folder.path(); got != folder {
		t.Errorf("chosen %q, want %q", got, folder)
	}
	before := len(r.window.Canvas().Overlays().List())
	r.folder.chosen(nil, errors.New("broken"))
	if got := len(r.window.Canvas().Overlays().List()); got != before+1 {
		t.Error("an error of the dialog is not shown")
	}
}

// opener is an app that opens pages, or cannot.
type opener struct {
	fyne.App
	opened *url.URL
	err    error
}

func (o *opener) OpenURL(page *url.URL) error {
	o.opened = page
	return o.err
}

func TestOpenFolder(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "a b%20c")
	r := newRig(t, folder, export.Write, long)
	r.untick("svg")
	test.Tap(r.button)
	r.finish()
	desktop := &opener{App: r.app}
	fyne.SetCurrentApp(desktop)
	defer fyne.SetCurrentApp(r.app)
	test.Tap(r.result.open)
	if desktop.opened == nil || filepath.FromSlash(desktop.opened.Path) != folder && runtime.GOOS != "windows" {
		t.Errorf("opened %v, want %s", desktop.opened, folder)
	}
	if r.result.failure.Text() != "" {
		t.Errorf("says %q", r.result.failure.Text())
	}
	desktop.err = errors.New("no desktop here")
	test.Tap(r.result.open)
	if got := r.result.failure.Text(); !strings.Contains(got, "no desktop here") || !strings.Contains(got, "file manager") {
		t.Errorf("says %q", got)
	}
}

// Closing ends what runs, and the step hears of the bag no more.
func TestClose(t *testing.T) {
	test.NewTempApp(t)
	before := runtime.NumGoroutine()
	r := newRig(t, "/files/bags", held(nil), long)
	test.Tap(r.button)
	r.Close()
	r.finish()
	if r.runner.Busy() {
		t.Error("still writing")
	}
	caption := r.picture.words.Text()
	r.change(func(s *bag.Spec) { s.Body.Seams = bag.SeamsTwo })
	if r.picture.words.Text() != caption {
		t.Error("it still follows the bag")
	}
	for range 100 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Errorf("%d goroutines, before there were %d", runtime.NumGoroutine(), before)
}

// Every kind of file has a title and a sentence of help that begins with a capital.
func TestEveryKindIsExplained(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	for i, kind := range export.Kinds() {
		line := r.kinds.lines[i]
		if line.check.Text != kind.Title || kind.Title == "" || line.help.Text() != capitalised(kind.Help) || line.help.Text() == kind.Help {
			t.Errorf("kind %s: %+v", kind.Name, line)
		}
	}
}

// New puts the real surroundings in place.
func TestNew(t *testing.T) {
	r := newRig(t, "/files/bags", export.Write, long)
	s := New(r.doc, func() string { return "x" }, r.set, r.window)
	defer s.Close()
	if s.patience != 500*time.Millisecond || s.now == nil || s.later == nil || s.button.Importance != widget.HighImportance {
		t.Errorf("surroundings %+v", s.surroundings)
	}
}

// BenchmarkShow is what an edit of the bag costs the step, without the picture.
func BenchmarkShow(b *testing.B) {
	app := test.NewTempApp(b)
	app.Preferences().SetString(folderKey, b.TempDir())
	doc := document.New()
	s := newStep(doc, func() string { return "x" }, settings.New(app.Preferences()), test.NewTempWindow(b, nil), jobs.New(export.Write),
		surroundings{func(func()) {}, time.Now, long})
	defer s.Close()
	state := doc.State()
	b.ReportAllocs()
	for b.Loop() {
		s.show(state)
	}
}

// BenchmarkPicture is the drawing of the small picture, on another goroutine.
func BenchmarkPicture(b *testing.B) {
	snapshot := document.New().State().Snapshot
	for b.Loop() {
		draw(drawing{snapshot, "2026-03-31"})
	}
}
