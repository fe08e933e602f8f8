package filestep

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/export"
	"gussetwright/geometry/bag"
)

const another = "of another bag"

// besideAnother returns a step that is to write two files, one of which is there already.
func besideAnother(t *testing.T) (r *rig, path string) {
	t.Helper()
	folder := t.TempDir()
	path = filepath.Join(folder, "tea-house.svg")
	if err := os.WriteFile(path, []byte(another), 0o644); err != nil {
		t.Fatal(err)
	}
	r = newRig(t, folder, export.Write, long)
	r.untick("svg", "fold")
	test.Tap(r.button)
	return r, path
}

func (r *rig) press(key fyne.KeyName) {
	r.t.Helper()
	focused := r.window.Canvas().Focused()
	if focused == nil {
		r.t.Fatalf("nothing takes %s", key)
	}
	focused.TypedKey(&fyne.KeyEvent{Name: key})
}

func wantAnother(t *testing.T, path string, want bool) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil || (string(data) == another) != want {
		t.Errorf("%s begins with %.20q, %v", path, data, err)
	}
}

// A file that was there before is replaced only once the user said so. What this window
// wrote itself it replaces without a question.
func TestAsksBeforeItReplaces(t *testing.T) {
	r, path := besideAnother(t)
	if !r.question.box.Visible() || r.runner.Busy() || !strings.Contains(r.question.words.Text(), ": 1, such as tea-house.svg.") {
		t.Fatalf("asks %t: %q", r.question.box.Visible(), r.question.words.Text())
	}
	r.press(fyne.KeyReturn)
	if r.question.box.Visible() || r.runner.Busy() || r.window.Canvas().Focused() != r.button {
		t.Error("the answer with the focus is not the harmless one, or does not lead back")
	}
	wantAnother(t, path, true)

	test.Tap(r.button)
	r.window.Canvas().Focus(r.question.replace)
	r.press(fyne.KeyReturn)
	if focused := r.window.Canvas().Focused(); focused != nil {
		t.Errorf("while files are written %T has the focus", focused)
	}
	r.finish()
	wantAnother(t, path, false)
	if r.question.box.Visible() || r.result.words.Text() != "Files written: 2" {
		t.Errorf("afterwards it asks %t and says %q", r.question.box.Visible(), r.result.words.Text())
	}

	r.change(func(s *bag.Spec) { s.Body.Width += 10 })
	test.Tap(r.button)
	if r.question.box.Visible() {
		t.Error("asks about files of its own")
	}
	r.finish()
}

// Other files than those it was asked about take the question back, and so does Escape.
func TestQuestionIsTakenBack(t *testing.T) {
	r, path := besideAnother(t)
	r.press(fyne.KeyEscape)
	if r.question.box.Visible() {
		t.Error("Escape does not take it back")
	}
	test.Tap(r.button)
	r.window.Canvas().Focus(r.question.replace)
	r.project = "coffee-house"
	r.change(func(s *bag.Spec) { s.Body.Width += 10 })
	if r.question.box.Visible() || r.window.Canvas().Focused() != nil {
		t.Error("asks about files that are not written any more, or still takes an answer")
	}
	wantAnother(t, path, true)
}
