// Package shortcuts is the one table of the keys that do something in the window.
// The window takes them from it, and the help page lists it.
package shortcuts

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
)

// ID names what a shortcut does, for the window to tie it to.
type ID string

// What can be done by a shortcut from everywhere in the window.
const (
	New             ID = "new"
	Open            ID = "open"
	Save            ID = "save"
	SaveAs          ID = "save-as"
	Files           ID = "files"
	Quit            ID = "quit"
	Undo            ID = "undo"
	Redo            ID = "redo"
	Fit             ID = "fit"
	ZoomIn          ID = "zoom-in"
	ZoomOut         ID = "zoom-out"
	Measure         ID = "measure"
	NextStep        ID = "next-step"
	PreviousStep    ID = "previous-step"
	NextFinding     ID = "next-finding"
	PreviousFinding ID = "previous-finding"
	LargerText      ID = "larger-text"
	SmallerText     ID = "smaller-text"
	AddArtwork      ID = "add-artwork"
	Meeting         ID = "meeting"
	Lesson          ID = "lesson"
	Help            ID = "help"
)

// Step returns the ID of going to a step of the job, counted from 1.
func Step(number int) ID { return ID(fmt.Sprintf("step-%d", number)) }

// Shortcut is a key and what it does.
type Shortcut struct {
	ID       ID // empty for keys that only work inside one part of the window
	Key      fyne.KeyName
	Modifier fyne.KeyModifier
	Also     fyne.KeyName // another key that does the same; or empty
	Shifted  bool         // also with the shift key, without which many keyboards do not give the sign
	Label    string       // what it does, in the language of the user
}

// Group is a part of the table with a title of its own.
type Group struct {
	Title     string
	Shortcuts []Shortcut
}

const (
	control = fyne.KeyModifierShortcutDefault // the command key on a Mac
	shift   = fyne.KeyModifierShift
	alt     = fyne.KeyModifierAlt
)

// arrows stands for the four arrow keys where they belong together.
const arrows fyne.KeyName = "← ↑ ↓ →"

// numbers stands for the keys of the first stages of a lesson, and of the sizes that are
// kept.
const numbers fyne.KeyName = "1 … 9"

// Steps is the number of steps of the job.
const Steps = 8

// Groups returns the table in the language of the user. Everything that works from
// everywhere has a modifier, for bare keys belong to the entry that is typed in.
func Groups() []Group {
	return []Group{
		{lang.L("File"), []Shortcut{
			{ID: New, Key: fyne.KeyN, Modifier: control, Label: lang.L("New bag")},
			{ID: Open, Key: fyne.KeyO, Modifier: control, Label: lang.L("Open a project")},
			{ID: Save, Key: fyne.KeyS, Modifier: control, Label: lang.L("Save")},
			{ID: SaveAs, Key: fyne.KeyS, Modifier: control | shift, Label: lang.L("Save under another name")},
			{ID: Files, Key: fyne.KeyE, Modifier: control, Label: lang.L("Write the files for printer and die-maker")},
			{ID: Quit, Key: fyne.KeyQ, Modifier: control, Label: lang.L("Quit")},
		}},
		{lang.L("Edit"), []Shortcut{
			{ID: Undo, Key: fyne.KeyZ, Modifier: control, Label: lang.L("Undo")},
			{ID: Redo, Key: fyne.KeyY, Modifier: control, Label: lang.L("Redo")},
		}},
		{lang.L("View"), []Shortcut{
			{ID: Fit, Key: fyne.Key0, Modifier: control, Label: lang.L("Show the whole blank")},
			{ID: ZoomIn, Key: fyne.KeyPlus, Modifier: control, Also: fyne.KeyEqual, Shifted: true, Label: lang.L("Zoom in")},
			{ID: ZoomOut, Key: fyne.KeyMinus, Modifier: control, Label: lang.L("Zoom out")},
			{ID: Measure, Key: fyne.KeyM, Modifier: control, Label: lang.L("Measure between two points")},
			{ID: LargerText, Key: fyne.KeyPlus, Modifier: control | alt, Also: fyne.KeyEqual, Shifted: true, Label: lang.L("Larger text")},
			{ID: SmallerText, Key: fyne.KeyMinus, Modifier: control | alt, Label: lang.L("Smaller text")},
			{ID: Meeting, Key: fyne.KeyF11, Modifier: control, Label: lang.L("Meeting view, full screen")},
			{Key: fyne.KeyF11, Label: lang.L("The same, where no button or list waits for keys")},
			{ID: Lesson, Key: fyne.KeyL, Modifier: control, Label: lang.L("Lesson: how the bag is folded")},
			{ID: Help, Key: fyne.KeyH, Modifier: control, Label: lang.L("Help")},
		}},
		{lang.L("Steps and findings"), append(steps(),
			Shortcut{ID: NextStep, Key: fyne.KeyPageDown, Modifier: control, Label: lang.L("Next step")},
			Shortcut{ID: PreviousStep, Key: fyne.KeyPageUp, Modifier: control, Label: lang.L("Previous step")},
			Shortcut{ID: AddArtwork, Key: fyne.KeyI, Modifier: control, Label: lang.L("Add artwork")},
			Shortcut{ID: NextFinding, Key: fyne.KeyDown, Modifier: control, Label: lang.L("Show the next finding")},
			Shortcut{ID: PreviousFinding, Key: fyne.KeyUp, Modifier: control, Label: lang.L("Show the previous finding")},
		)},
		{lang.L("In an entry"), []Shortcut{
			{Key: fyne.KeyUp, Label: lang.L("One step more")},
			{Key: fyne.KeyDown, Label: lang.L("One step less")},
			{Key: fyne.KeyUp, Modifier: shift, Also: fyne.KeyPageUp, Label: lang.L("Ten steps more")},
			{Key: fyne.KeyDown, Modifier: shift, Also: fyne.KeyPageDown, Label: lang.L("Ten steps less")},
			{Key: fyne.KeyUp, Modifier: alt, Label: lang.L("A tenth of a step more")},
			{Key: fyne.KeyDown, Modifier: alt, Label: lang.L("A tenth of a step less")},
			{Key: fyne.KeyReturn, Also: fyne.KeyTab, Label: lang.L("Take the value")},
			{Key: fyne.KeyEscape, Label: lang.L("Put the old value back")},
		}},
		{lang.L("In the blank"), []Shortcut{
			{Key: arrows, Label: lang.L("Move the view; in the Artwork step the chosen piece by 1 mm, with Shift by 10 mm; while measuring, go to the next point")},
			{Key: fyne.KeyPlus, Label: lang.L("Zoom in")},
			{Key: fyne.KeyMinus, Label: lang.L("Zoom out")},
			{Key: fyne.KeyF, Label: lang.L("Show the whole blank")},
			{Key: fyne.Key0, Label: lang.L("True size")},
			{Key: fyne.KeyM, Label: lang.L("Measure between two points")},
			{Key: fyne.KeyEscape, Label: lang.L("End measuring or a drag")},
		}},
		{lang.L("In the list of artwork"), []Shortcut{
			{Key: fyne.KeyUp, Also: fyne.KeyDown, Label: lang.L("Choose another piece")},
			{Key: fyne.KeyUp, Modifier: alt, Label: lang.L("Bring the piece forward")},
			{Key: fyne.KeyDown, Modifier: alt, Label: lang.L("Send the piece back")},
			{Key: fyne.KeyDelete, Label: lang.L("Take the piece out")},
		}},
		{lang.L("In the folded bag"), []Shortcut{
			{Key: arrows, Label: lang.L("Turn the bag")},
			{Key: fyne.KeyPlus, Label: lang.L("Zoom in")},
			{Key: fyne.KeyMinus, Label: lang.L("Zoom out")},
			{Key: fyne.KeyF, Label: lang.L("Show the whole bag")},
		}},
		{lang.L("In the meeting view"), []Shortcut{
			{Key: arrows, Label: lang.L("Move the slider in use by a step, with Shift by a fine one; turn the bags, where they have the focus")},
			{Key: fyne.KeyK, Label: lang.L("Keep this size")},
			{Key: numbers, Label: lang.L("Show the size that was kept as A, B, C …; a second time, make it the bag")},
			{Key: fyne.Key0, Label: lang.L("Show the bag as it is now")},
			{Key: fyne.KeyReturn, Label: lang.L("Make the size that is shown the bag")},
			{Key: fyne.KeyDelete, Label: lang.L("Remove the size that is shown; undo puts it back")},
			{Key: fyne.KeyC, Label: lang.L("Compare side by side, or show only one")},
			{Key: fyne.KeyF, Label: lang.L("Turn the bags back to the first view")},
			{Key: fyne.KeyPlus, Label: lang.L("Zoom in")},
			{Key: fyne.KeyMinus, Label: lang.L("Zoom out")},
			{Key: fyne.KeyP, Label: lang.L("Write the proof for the client")},
			{Key: fyne.KeyEscape, Also: fyne.KeyF11, Label: lang.L("Leave the meeting view")},
		}},
		{InLesson(), []Shortcut{
			{Key: fyne.KeyRight, Also: fyne.KeyPageDown, Label: lang.L("Show the next step")},
			{Key: fyne.KeyLeft, Also: fyne.KeyPageUp, Label: lang.L("Show the step before")},
			{Key: numbers, Label: lang.L("Show the step of that number; from 10 on type two digits")},
			{Key: fyne.KeyR, Also: fyne.KeyBackspace, Label: lang.L("Show the step once more")},
			{Key: fyne.KeySpace, Label: lang.L("Play, or pause")},
			{Key: fyne.KeyUp, Label: lang.L("A little on")},
			{Key: fyne.KeyDown, Label: lang.L("A little back")},
			{Key: fyne.KeyHome, Label: lang.L("To the flat blank")},
			{Key: fyne.KeyEnd, Label: lang.L("To the end")},
			{Key: fyne.KeyPlus, Label: lang.L("Faster")},
			{Key: fyne.KeyMinus, Label: lang.L("Slower")},
			{Key: fyne.Key0, Label: lang.L("Show the whole bag")},
			{Key: fyne.KeyA, Label: lang.L("With or without artwork")},
			{Key: fyne.KeyW, Label: lang.L("Read on, where the words have no room")},
			{Key: fyne.KeyT, Label: lang.L("Turn the blank over; back again it follows the step")},
			{Key: fyne.KeyF, Label: lang.L("Full screen")},
			{Key: fyne.KeyEscape, Label: lang.L("Leave the lesson")},
		}},
	}
}

// InLesson returns the title of the group of keys of the lesson.
func InLesson() string { return lang.L("In the lesson") }

func steps() []Shortcut {
	names := [Steps]string{
		lang.L("Product"), lang.L("Bag"), lang.L("Carry"), lang.L("Paper"),
		lang.L("Sheet"), lang.L("Artwork"), lang.L("Quote"), lang.L("Files"),
	}
	keys := [Steps]fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5, fyne.Key6, fyne.Key7, fyne.Key8}
	var rows []Shortcut
	for i, name := range names {
		rows = append(rows, Shortcut{
			ID: Step(i + 1), Key: keys[i], Modifier: control, Label: fmt.Sprintf(lang.L("Go to the step %s"), name),
		})
	}
	return rows
}

// Find returns the shortcut of an ID.
func Find(id ID) (Shortcut, bool) {
	for _, group := range Groups() {
		for _, s := range group.Shortcuts {
			if s.ID == id && id != "" {
				return s, true
			}
		}
	}
	return Shortcut{}, false
}
