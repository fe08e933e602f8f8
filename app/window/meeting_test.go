package window

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gussetwright/app/project"
	"gussetwright/app/proof"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
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

// letterA is the size that the demo bag has, as a project keeps it.
var letterA = project.KeptSize{Letter: "A", Width: 190, Gusset: 95, Height: 265}

// What is kept in a meeting is there at the next one, after the program ended and after
// another project was open; nobody closes it unasked, and undo at the desk leaves it.
func TestKeptSizesAreThereAtTheNextMeeting(t *testing.T) {
	path, another := demoFile(t), plainFile(t)
	w := opened(t, path)
	w.toggleMeeting()
	w.meeting.TypedRune('k')
	w.toggleMeeting()
	if title := w.window.Title(); title != "demo* – Gussetwright" {
		t.Errorf("the title is %q", title)
	}
	w.undo()
	w.close()
	if !w.bar.Visible() {
		t.Error("the window is closed without a question")
	}
	w.bar.Escape()
	w.save()
	if w.window.Title() != "demo – Gussetwright" {
		t.Errorf("after saving the title is %q; the bar says %q", w.window.Title(), w.bar.Text())
	}
	w.openRecent(another)
	if kept := w.doc.Kept(); len(kept) != 0 {
		t.Errorf("the other project keeps %v", kept)
	}
	w.openRecent(path)
	for name, next := range map[string]*Window{"opened again": w, "another run of the program": opened(t, path)} {
		next.toggleMeeting()
		widen(next)
		if next.meeting.TypedRune('1'); next.meeting.Said() != "" || !slices.Equal(next.doc.Kept(), []project.KeptSize{letterA}) {
			t.Errorf("%s: it says %q and keeps %v", name, next.meeting.Said(), next.doc.Kept())
		}
		next.meeting.TypedRune('1')
		if body := next.doc.State().Spec.Body; body.Width != letterA.Width {
			t.Errorf("%s: A makes the bag %g mm wide", name, body.Width)
		}
	}
}

// A copy of unsaved work follows what is kept, though the bag did not change.
func TestKeptSizesAreCopied(t *testing.T) {
	recovery := t.TempDir()
	w := openedIn(t, newApp(t), demoFile(t), recovery)
	w.toggleMeeting()
	w.keeper.since = time.Time{} // nothing is on its way
	if w.meeting.TypedRune('k'); w.keeper.since.IsZero() {
		t.Fatal("no copy is on its way")
	}
	w.keeper.keep()
	copies, err := filepath.Glob(filepath.Join(recovery, "*", "copy.json"))
	if err != nil || len(copies) != 1 {
		t.Fatalf("copies %q, %v", copies, err)
	}
	if data, err := os.ReadFile(copies[0]); err != nil || !strings.Contains(string(data), "kept_sizes") {
		t.Errorf("the copy holds no kept size: %v", err)
	}
}

// What is chosen when the meeting ends becomes the bag, as it does for a proof, and the
// desk says so.
func TestLeavingTheMeetingTakesWhatIsChosen(t *testing.T) {
	w := opened(t, demoFile(t))
	w.toggleMeeting()
	w.meeting.TypedRune('k')
	widen(w)
	w.meeting.TypedRune('1')
	if press(w, fyne.KeyEscape); w.inMeeting() || w.doc.State().Spec.Body.Width != 190 || !strings.Contains(w.bar.Text(), "The bag is A now") {
		t.Errorf("meeting %v, %g mm, the bar says %q", w.inMeeting(), w.doc.State().Spec.Body.Width, w.bar.Text())
	}
	w.bar.Escape()
	w.toggleMeeting()
	if press(w, fyne.KeyEscape); w.bar.Visible() {
		t.Errorf("nothing was chosen, and the bar says %q", w.bar.Text())
	}
}

// In the meeting the key of undo brings back what was removed there, before it takes back
// steps; at the desk it takes back steps alone.
func TestUndoInTheMeeting(t *testing.T) {
	w := opened(t, demoFile(t))
	typed := w.window.Canvas().(interface{ TypedShortcut(fyne.Shortcut) })
	w.toggleMeeting()
	widen(w)
	w.meeting.TypedRune('k')
	w.meeting.TypedRune('1')
	w.meeting.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	before := w.doc.State().Spec.Body.Width
	typed.TypedShortcut(&fyne.ShortcutUndo{})
	if w.doc.State().Spec.Body.Width != before || !strings.Contains(w.meeting.Said(), "A is back") {
		t.Errorf("undone to %g mm; it says %q", w.doc.State().Spec.Body.Width, w.meeting.Said())
	}
	typed.TypedShortcut(&fyne.ShortcutUndo{})
	if w.doc.State().Spec.Body.Width != 190 {
		t.Errorf("the step before: %g mm", w.doc.State().Spec.Body.Width)
	}
	widen(w)
	w.meeting.TypedRune('1')
	w.meeting.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	press(w, fyne.KeyEscape)
	if typed.TypedShortcut(&fyne.ShortcutUndo{}); w.doc.State().Spec.Body.Width != 190 {
		t.Errorf("undone at the desk: %g mm", w.doc.State().Spec.Body.Width)
	}
}

// What is said of the proof is what its own last page says, as poppler's pdftotext reads it.
func TestProofOfTheMeeting(t *testing.T) {
	for name, replaced := range map[string]string{"first": "", "open points": "", "again": " It replaces the one of 2020-05-04 09:30."} {
		t.Run(name, func(t *testing.T) {
			app, folder := newApp(t), t.TempDir()
			app.Preferences().SetString(filesFolder, folder)
			path := filepath.Join(folder, "plain-proof.pdf")
			if replaced != "" {
				writeEarlier(t, path, time.Date(2020, 5, 4, 9, 30, 0, 0, time.Local))
			}
			w := openedIn(t, app, plainFile(t), t.TempDir())
			said, inside := " Nothing is left open.", "Still open: nothing"
			if name == "open points" {
				spec := w.doc.State().Spec
				spec.Paper.Grain, spec.Body.Height = bag.GrainWidth, 700
				w.doc.Set(spec)
				count := proof.OpenPoints(w.doc.State().Snapshot)
				if count == 0 {
					t.Fatal("the bag has no open points")
				}
				said = fmt.Sprintf(" It lists the points that are still open: %d.", count)
				inside = fmt.Sprintf("Still open, as listed in this proof: %d", count)
			}
			w.toggleMeeting()
			w.meeting.TypedRune('p')
			for end := time.Now().Add(time.Minute); ; time.Sleep(10 * time.Millisecond) {
				if data, err := os.ReadFile(path); err == nil && strings.HasPrefix(string(data), "%PDF-") {
					break
				}
				if time.Now().After(end) {
					t.Fatalf("no proof; it says %q", w.meeting.Said())
				}
			}
			w.files.Close() // waits for the end
			catchUp()
			if got, want := w.meeting.Said(), "The proof is in "+path+"."+replaced+said; got != want {
				t.Errorf("it says %q, want %q", got, want)
			}
			text := strings.Join(strings.Fields(string(geomtest.Run(t, "pdftotext", path, "-"))), " ")
			if !strings.Contains(text, inside) {
				t.Errorf("the proof lacks %q: %s", inside, text)
			}
		})
	}
}

// writeEarlier writes some file of a time before.
func writeEarlier(t *testing.T, path string, when time.Time) {
	t.Helper()
	if err := os.WriteFile(path, []byte("earlier"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(path, when, when); err != nil {
		t.Fatal(err)
	}
}

// What is still open in the proof is said where it is written.
func TestProofWithOpenPoints(t *testing.T) {
	for open, want := range map[int]string{
		0: "The proof is in a.pdf. Nothing is left open.",
		1: "The proof is in a.pdf. It lists the points that are still open: 1.",
		3: "The proof is in a.pdf. It lists the points that are still open: 3.",
	} {
		if got := proofWords([]string{"a.pdf"}, file{path: "b.pdf"}, open); got != want {
			t.Errorf("it says %q, want %q", got, want)
		}
	}
	now := time.Date(2025, 11, 25, 19, 45, 0, 0, time.Local)
	if today, before := moment(now.Add(-time.Hour), now), moment(now.AddDate(0, 0, -1), now); today != "18:45" || before != "2025-11-24 19:45" {
		t.Errorf("today %q, before %q", today, before)
	}
}
