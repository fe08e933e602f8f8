package window

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/help"
	"gussetwright/app/shortcuts"
)

func TestLessonNeedsABag(t *testing.T) {
	w := opened(t, "")
	w.toggleLesson()
	if w.inLesson() || !strings.Contains(w.bar.Text(), "folds a bag") {
		t.Errorf("in the lesson %v, the bar says %q", w.inLesson(), w.bar.Text())
	}
}

// The lesson takes the place of the desk, keeps the keys to itself and gives everything
// back: by Escape, by its menu item, by going to a step or by opening another page.
func TestLessonComesAndGoes(t *testing.T) {
	w := opened(t, demoFile(t))
	press := func(key fyne.KeyName) { w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key}) }
	enter := func() {
		t.Helper()
		w.toggleLesson()
		if !w.inLesson() || w.foot.Visible() || w.window.Canvas().Focused() != w.lesson.FirstFocus() {
			t.Fatalf("in the lesson %v, status line %v, focus on %T", w.inLesson(), w.foot.Visible(), w.window.Canvas().Focused())
		}
	}
	leave := map[string]func(){
		"Escape":  func() { press(fyne.KeyEscape) },
		"menu":    w.toggleLesson,
		"step":    func() { w.goToStep(stepBag) },
		"help":    w.showHelp,
		"meeting": w.toggleMeeting,
	}
	for name, by := range leave {
		enter()
		w.lesson.TypedRune('f')
		if !w.window.FullScreen() || w.window.MainMenu() != nil {
			t.Errorf("%s: the lesson has not all of the screen", name)
		}
		w.lesson.TypedRune('5')
		by()
		if w.inLesson() || w.window.FullScreen() != (name == "meeting") || (w.window.MainMenu() == nil) != (name == "meeting") {
			t.Errorf("%s: in the lesson %v, full screen %v", name, w.inLesson(), w.window.FullScreen())
		}
		ordered, _ := w.lesson.Pictures()
		widen(w)
		if now, _ := w.lesson.Pictures(); now != ordered {
			t.Errorf("%s: the lesson goes on drawing", name)
		}
		w.showPage(nil)
	}
	enter()
	w.window.Canvas().Unfocus() // keys that nobody takes come to the lesson too
	w.window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if !w.atDesk() || !w.foot.Visible() {
		t.Error("Escape without a focus does not lead to the desk")
	}
}

// The buttons say where the files went, or why there are none.
func TestLessonIsPrinted(t *testing.T) {
	w := opened(t, demoFile(t))
	w.toggleLesson()
	w.writeLesson("lessons of another kind")
	if !strings.Contains(w.lesson.Said(), "cannot be written") || !strings.Contains(w.lesson.Said(), "not known") {
		t.Errorf("of a kind that nobody knows it says %q", w.lesson.Said())
	}
	w.tell("Something else")
	w.lesson.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if !w.inLesson() || w.bar.Visible() {
		t.Error("Escape leaves the lesson while there is something to answer")
	}
}

// From the help the lesson comes back as it was left, with the keys; so do the desk and the
// meeting view.
func TestHelpLeadsBackToTheLesson(t *testing.T) {
	w := opened(t, demoFile(t))
	press := func(key fyne.KeyName) { w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key}) }
	w.toggleLesson()
	w.lesson.TypedRune('7')
	w.lesson.TypedRune('f')
	before := w.lesson.Stage()
	for _, back := range []fyne.KeyName{fyne.KeyEscape, fyne.KeySpace} { // Space presses the button that leads back
		w.showHelp()
		if w.inLesson() {
			t.Fatal("the help is not shown")
		}
		w.showHelp() // once more does nothing
		press(back)
		if !w.inLesson() || w.lesson.Stage() != before || before != 6 || !w.window.FullScreen() {
			t.Errorf("%s leads to stage %d, in the lesson %v, was at %d, full screen %v", back, w.lesson.Stage(), w.inLesson(), before, w.window.FullScreen())
		}
		if w.window.Canvas().Focused() != w.lesson.FirstFocus() {
			t.Errorf("%s: the keys go to %T", back, w.window.Canvas().Focused())
		}
	}
	press(fyne.KeyEscape)
	if !w.atDesk() {
		t.Error("the keys do not reach the lesson")
	}
	w.showHelp()
	press(fyne.KeyEscape)
	if w.window.Canvas().Focused() != nil {
		t.Errorf("at the desk the keys go to %T of the help", w.window.Canvas().Focused())
	}
	w.toggleMeeting()
	w.showHelp()
	press(fyne.KeyEscape)
	if !w.inMeeting() || w.window.Canvas().Focused() != w.meeting.FirstFocus() {
		t.Errorf("in the meeting view %v, the keys go to %T", w.inMeeting(), w.window.Canvas().Focused())
	}
}

// Opened from the lesson, by its menu item or by its key on the whole screen, the help
// begins with the keys of the lesson; from the desk, with those of the menu.
func TestHelpBeginsWhereTheUserIs(t *testing.T) {
	w := opened(t, demoFile(t))
	first := func() string {
		t.Helper()
		page, shown := w.pages.Objects[0].(*help.Page)
		if !shown {
			t.Fatal("the help is not shown")
		}
		titles := map[string]bool{}
		for _, group := range shortcuts.Groups() {
			titles[group.Title] = true
		}
		for _, object := range test.LaidOutObjects(page) {
			if label, is := object.(*widget.Label); is && titles[label.Text] {
				return label.Text
			}
		}
		return ""
	}
	key, _ := shortcuts.Find(shortcuts.Help)
	ask := func() {
		w.window.Canvas().(interface{ TypedShortcut(fyne.Shortcut) }).TypedShortcut(key.Shortcut())
	}
	if ask(); first() != "File" {
		t.Errorf("from the desk the help begins with %q", first())
	}
	press(w, fyne.KeyEscape)
	w.toggleLesson()
	w.lesson.TypedRune('f')
	if ask(); first() != "In the lesson" {
		t.Errorf("from the lesson the help begins with %q", first())
	}
	press(w, fyne.KeyEscape)
	if !w.inLesson() {
		t.Error("the help does not lead back to the lesson")
	}
}
