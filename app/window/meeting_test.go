package window

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"gussetwright/geometry/bag"
)

// press types a key where the focus is, and in the window where nothing has it.
func press(w *Window, name fyne.KeyName) {
	key := &fyne.KeyEvent{Name: name}
	if focused := w.window.Canvas().Focused(); focused != nil {
		focused.TypedKey(key)
		return
	}
	w.window.Canvas().OnTypedKey()(key)
}

func TestMeetingFillsTheScreen(t *testing.T) {
	w := opened(t, demoFile(t))
	blank, folded := w.blank.Size(), w.folded.Size()
	press(w, fyne.KeyF11)
	if !w.inMeeting() || !w.window.FullScreen() || w.window.MainMenu() != nil || w.foot.Visible() {
		t.Fatalf("after F11: meeting %v, full screen %v, menu %v, foot %v",
			w.inMeeting(), w.window.FullScreen(), w.window.MainMenu() != nil, w.foot.Visible())
	}
	if w.window.Canvas().Focused() != w.meeting.FirstFocus() {
		t.Error("the keys do not go to the first slider")
	}
	ordered, _ := w.pictures()
	before, _ := w.meeting.Pictures()
	press(w, fyne.KeyRight)
	if now, _ := w.pictures(); now != ordered {
		t.Error("panes that nobody sees are drawn")
	}
	if now, _ := w.meeting.Pictures(); now <= before {
		t.Error("the bag is not drawn")
	}
	press(w, fyne.KeyEscape)
	if !w.atDesk() || w.window.FullScreen() || w.window.MainMenu() != w.menu.main || !w.foot.Visible() {
		t.Errorf("after Escape: desk %v, full screen %v, foot %v", w.atDesk(), w.window.FullScreen(), w.foot.Visible())
	}
	if w.blank.Size() != blank || w.folded.Size() != folded {
		t.Errorf("the panes have %v and %v, before %v and %v", w.blank.Size(), w.folded.Size(), blank, folded)
	}
	state := w.doc.State()
	if state.Dragging || state.Spec.Body.Width != 195 || state.Undo.Label != "Face width" {
		t.Errorf("the step that was under way: %+v, %g mm", state.Undo, state.Spec.Body.Width)
	}
	ordered, _ = w.pictures()
	if widen(w); w.atDesk() {
		if now, _ := w.pictures(); now[0] <= ordered[0] || now[1] <= ordered[1] {
			t.Error("the panes are not drawn any more")
		}
	}
}

// F11 works where something is typed, takes that over, and works in the view as well.
func TestMeetingBeginsWhereverTheFocusIs(t *testing.T) {
	w := opened(t, demoFile(t))
	typeWidth(t, w, "231")
	if press(w, fyne.KeyF11); !w.inMeeting() || w.doc.State().Spec.Body.Width != 231 {
		t.Errorf("meeting %v, %g mm", w.inMeeting(), w.doc.State().Spec.Body.Width)
	}
	if press(w, fyne.KeyF11); w.inMeeting() {
		t.Error("F11 does not lead back")
	}
	seen := map[fyne.Focusable]bool{}
	for w.window.Canvas().FocusNext(); !seen[w.window.Canvas().Focused()]; w.window.Canvas().FocusNext() {
		seen[w.window.Canvas().Focused()] = true
	}
	deaf := 0
	for part := range seen {
		w.window.Canvas().Focus(part)
		if press(w, fyne.KeyF11); w.inMeeting() {
			press(w, fyne.KeyEscape)
		} else {
			deaf++ // a button or a list of the toolkit
		}
	}
	if len(seen) < 20 || deaf > len(seen)/2 {
		t.Errorf("of %d parts that take keys %d keep F11 to themselves", len(seen), deaf)
	}
	typed := w.window.Canvas().(interface{ TypedShortcut(fyne.Shortcut) })
	if typed.TypedShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyF11, Modifier: fyne.KeyModifierShortcutDefault}); !w.inMeeting() {
		t.Error("Ctrl + F11 does nothing")
	}
}

// What cannot be read keeps the window where it is.
func TestMeetingWaitsForTyping(t *testing.T) {
	w := opened(t, demoFile(t))
	typeWidth(t, w, "wide")
	if press(w, fyne.KeyF11); w.inMeeting() {
		t.Error("the meeting view hides what could not be read")
	}
}

func TestMeetingNeedsABag(t *testing.T) {
	w := opened(t, "")
	if press(w, fyne.KeyF11); w.inMeeting() || !strings.Contains(w.bar.Text(), "Begin one") {
		t.Errorf("meeting %v, the bar says %q", w.inMeeting(), w.bar.Text())
	}
}

// Whatever leads to another page ends the meeting in good order.
func TestOtherPagesEndTheMeeting(t *testing.T) {
	w := opened(t, demoFile(t))
	for name, leave := range map[string]func(){
		"next step": func() { w.nextStep(1) }, "help": w.showHelp, "welcome": w.showWelcome, "tour": w.startTour,
	} {
		w.begun = true
		w.toggleMeeting()
		if !w.inMeeting() {
			t.Fatalf("%s: no meeting", name)
		}
		if leave(); w.inMeeting() || w.window.FullScreen() || w.window.MainMenu() == nil {
			t.Errorf("%s leaves the meeting without its end", name)
		}
		w.layers.Remove(w.tour)
		w.tour = nil
	}
}

// Without a menu the keys of undo and saving still work, and a question is answered
// before the meeting is left.
func TestKeysOfTheMenuInTheMeeting(t *testing.T) {
	w := opened(t, demoFile(t))
	w.toggleMeeting()
	widen(w)
	typed := w.window.Canvas().(interface{ TypedShortcut(fyne.Shortcut) })
	typed.TypedShortcut(&fyne.ShortcutUndo{})
	if w.doc.State().Spec.Body.Width != 190 {
		t.Error("undo does nothing")
	}
	typed.TypedShortcut(&fyne.ShortcutRedo{})
	w.close()
	w.window.Canvas().Focus(w.meeting.FirstFocus()) // the question took it
	if press(w, fyne.KeyEscape); !w.inMeeting() || w.bar.Visible() {
		t.Error("Escape leaves the meeting, not the question")
	}
	w.window.Canvas().Unfocus()
	if press(w, fyne.KeyEscape); w.inMeeting() {
		t.Error("Escape without focus does not leave the meeting")
	}
}

// A new bag and an opened project begin without variants.
func TestVariantsEndWithTheProject(t *testing.T) {
	w := opened(t, demoFile(t))
	w.toggleMeeting()
	w.window.Canvas().Focused().TypedRune('k')
	w.window.Canvas().Unfocus()
	w.window.Canvas().OnTypedRune()('k')
	if !strings.Contains(w.meeting.Said(), "A already") {
		t.Fatalf("the size is not kept: %q", w.meeting.Said())
	}
	w.beginAt(bag.Default(), stepBag)
	w.toggleMeeting()
	if w.meeting.TypedRune('1'); !strings.Contains(w.meeting.Said(), "Nothing is kept as A") {
		t.Errorf("the new bag has a variant: %q", w.meeting.Said())
	}
}

func TestProofOfTheMeeting(t *testing.T) {
	app, folder := test.NewTempApp(t), t.TempDir()
	app.Preferences().SetString("files-folder", folder)
	w := openedIn(t, app, plainFile(t), t.TempDir())
	w.toggleMeeting()
	w.meeting.TypedRune('p')
	path := filepath.Join(folder, "plain-proof.pdf")
	for end := time.Now().Add(time.Minute); ; time.Sleep(10 * time.Millisecond) {
		if _, err := os.Stat(path); err == nil {
			break
		}
		if time.Now().After(end) {
			t.Fatalf("no proof; it says %q", w.meeting.Said())
		}
	}
	w.files.Close() // waits for the end
	if got, want := w.meeting.Said(), "The proof is in "+path; got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
	if data, err := os.ReadFile(path); err != nil || !strings.HasPrefix(string(data), "%PDF-") {
		t.Errorf("%.10q, %v", data, err)
	}
}
