package window

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/project"
)

// tabs goes on by so many parts of what is shown.
func tabs(w *Window, count int) {
	for range count {
		w.window.Canvas().(interface{ FocusNext() }).FocusNext()
	}
}

// Enter saves as the button does, in the name and in the folder, with either key; Escape
// cancels from everywhere.
func TestKeysEndTheQuestionForAFile(t *testing.T) {
	w := opened(t, demoFile(t))
	folder := t.TempDir()
	ask := func(name string) *askFile {
		question := &askFile{window: w, ending: projectEnding, then: func(path string) { w.saved(w.file.SaveAs(path), func() {}) }}
		question.ask(folder, name)
		return question
	}
	is := func(name string) bool {
		_, err := project.Open(filepath.Join(folder, name+projectEnding))
		return err == nil
	}
	for name, key := range map[string]fyne.KeyName{"enter": fyne.KeyEnter, "return": fyne.KeyReturn} {
		question := ask("")
		if w.window.Canvas().Focused() != fyne.Focusable(question.name) {
			t.Fatalf("the keys go to %T", w.window.Canvas().Focused())
		}
		test.Type(question.name, name)
		if press(w, key); !is(name) || w.over() != nil {
			t.Errorf("%s: saved %v, the question is open %v", name, is(name), w.over() != nil)
		}
	}
	question := ask("folder")
	w.window.Canvas().Focus(question.folder)
	if press(w, fyne.KeyReturn); !is("folder") {
		t.Error("Enter in the folder does not save")
	}
	for count := range 5 { // name, folder, browse, cancel, save
		ask("escaped")
		tabs(w, count)
		if press(w, fyne.KeyEscape); is("escaped") || w.over() != nil {
			t.Errorf("Escape at part %d: saved %v, the question is open %v", count, is("escaped"), w.over() != nil)
		}
	}
	ask("unfocused")
	w.window.Canvas().Unfocus()
	if press(w, fyne.KeyEscape); is("unfocused") || w.over() != nil || !w.atDesk() {
		t.Error("Escape without a focus does not cancel")
	}
	ask("cancelled")
	tabs(w, 3)
	if press(w, fyne.KeyReturn); is("cancelled") || w.over() != nil {
		t.Error("Enter on Cancel does not cancel")
	}
}

// The picture of the folded bag is asked for in the same way.
func TestEnterSavesThePicture(t *testing.T) {
	w := opened(t, demoFile(t))
	w.savePicture()
	if press(w, fyne.KeyReturn); w.over() != nil {
		t.Fatal("the question stays")
	}
	path := filepath.Join(w.folderToBegin(), "demo-folded.png")
	if _, err := os.Stat(path); err != nil {
		t.Errorf("%v; the bar says %q", err, w.bar.Text())
	}
}

// Keys of the menu and of the window do nothing to what lies behind a dialog. Undo belongs
// to what is typed in it.
func TestKeysKeepOffWhatIsBehindADialog(t *testing.T) {
	w := opened(t, demoFile(t))
	widen(w)
	step, width := w.steps.Selected(), w.doc.State().Spec.Body.Width
	w.saveAs()
	name := w.window.Canvas().Focused().(*askEntry)
	was := name.Text
	test.Type(name, "x")
	typed := w.window.Canvas().(interface{ TypedShortcut(fyne.Shortcut) })
	for _, group := range w.menu.main.Items {
		for _, item := range group.Items {
			if item.Shortcut != nil && !item.IsQuit {
				item.Action()
				typed.TypedShortcut(item.Shortcut)
			}
		}
	}
	typed.TypedShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyPageDown, Modifier: fyne.KeyModifierShortcutDefault})
	w.window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyF11})
	if got := w.steps.Selected(); got != step || !w.atDesk() || w.doc.State().Spec.Body.Width != width {
		t.Errorf("step %d, was %d; at the desk %v; %g mm, were %g", got, step, w.atDesk(), w.doc.State().Spec.Body.Width, width)
	}
	if count := len(w.window.Canvas().Overlays().List()); count != 1 || w.over() == nil {
		t.Errorf("%d dialogs are open", count)
	}
	w.menu.redo.Action()
	name.SetText(was)
	test.Type(name, "y")
	w.menu.undo.Action()
	if name.Text == was+"y" || name.Text == "y"+was {
		t.Errorf("undo leaves %q in the entry", name.Text)
	}
	press(w, fyne.KeyEscape)
	w.menu.main.Items[3].Items[7].Action()
	if w.steps.Selected() != 7 {
		t.Errorf("with the dialog closed the keys lead to step %d", w.steps.Selected()+1)
	}
}
