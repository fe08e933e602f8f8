package window

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/export"
	"gussetwright/app/jobs"
	"gussetwright/app/meeting"
	"gussetwright/app/places"
	"gussetwright/app/proof"
	"gussetwright/app/shortcuts"
	"gussetwright/app/words"
)

// newMeeting makes the view for deciding together with a client.
func (w *Window) newMeeting() {
	w.meeting = meeting.New(w.doc, w.set, meeting.Around{
		Leave: func() {
			if !w.bar.Escape() {
				w.showPage(nil)
			}
		},
		Proof: w.writeProof,
	})
}

// inMeeting tells whether the meeting view is shown.
func (w *Window) inMeeting() bool { return w.pages.Objects[0] == w.meeting }

// toggleMeeting shows the meeting view, or leads back to the desk.
func (w *Window) toggleMeeting() {
	switch {
	case w.inMeeting():
		w.showPage(nil)
	case !w.begun:
		w.tell(lang.L("The meeting view shows a bag. Begin one or open a project first."))
	case w.commitTyping():
		w.showPage(w.meeting)
		w.window.Canvas().Focus(w.meeting.FirstFocus())
	}
}

// beginMeeting gives the whole screen to the meeting view. The panes have no size
// meanwhile, and so do not draw what nobody sees.
func (w *Window) beginMeeting() {
	w.resting = [2]fyne.Size{w.blank.Size(), w.folded.Size()}
	w.blank.Resize(fyne.Size{})
	w.folded.Resize(fyne.Size{})
	w.fillScreen()
	w.meeting.Open(w.folded.Reference())
	w.undoBy(w.meeting.Undo)
}

// endMeeting brings everything back to where it was.
func (w *Window) endMeeting() {
	said := w.meeting.Shut()
	w.undoBy(w.undo)
	w.window.SetFullScreen(false)
	w.window.SetMainMenu(w.menu.main)
	w.blank.Resize(w.resting[0])
	w.folded.Resize(w.resting[1])
	w.window.Canvas().Unfocus()
	if said != "" {
		w.tell(said)
	}
}

// undoBy ties the key of undo: in the meeting view it also brings back what was removed
// there.
func (w *Window) undoBy(undo func()) {
	shortcuts.Register(w.window.Canvas(), map[shortcuts.ID]func(){shortcuts.Undo: undo})
}

const (
	proofKind   = "proof"        // the kind of file that a client signs
	filesFolder = "files-folder" // where the step Files remembers its folder
)

// writeProof writes the proof for the client, and says in the meeting view where it is and
// what is to be known of it.
func (w *Window) writeProof() {
	w.meeting.Say(lang.L("The proof is being written…"))
	earlier, snapshot := w.earlierProof(), w.doc.State().Snapshot
	w.files.Deliver(proofKind, func(result jobs.Result) {
		if result.Err != nil {
			w.meeting.Say(fmt.Sprintf(lang.L("The proof cannot be written: %s"), words.Error(result.Err)))
			return
		}
		var open int
		w.saver.run(func() { open = proof.OpenPoints(snapshot) }, func() {
			w.meeting.Say(proofWords(result.Paths, earlier, open))
		})
	})
}

// proofWords tells where a proof is, and what is to be known of it. earlier is what had
// its name before, and open is how many points the proof says are still open.
func proofWords(paths []string, earlier file, open int) string {
	said := []string{fmt.Sprintf(lang.L("The proof is in %s"), strings.Join(paths, ", ")+".")}
	if slices.Equal(paths, []string{earlier.path}) {
		said = append(said, fmt.Sprintf(lang.L("It replaces the one of %s."), moment(earlier.written, time.Now())))
	}
	if open > 0 {
		said = append(said, fmt.Sprintf(lang.L("It lists the points that are still open: %d."), open))
	} else {
		said = append(said, lang.L("Nothing is left open."))
	}
	return strings.Join(said, " ")
}

// file is a file that is there.
type file struct {
	path    string
	written time.Time
}

// earlierProof returns the proof that the next one will replace, if there is one. Proofs
// have one name, so that nobody signs one of several.
func (w *Window) earlierProof() (there file) {
	kinds, err := export.Choose(proofKind)
	if err != nil {
		return file{}
	}
	folder, err := filepath.Abs(fyne.CurrentApp().Preferences().StringWithFallback(filesFolder, places.Usual()))
	if err != nil {
		return file{}
	}
	for _, name := range kinds[0].Files(w.baseName(), w.doc.State().Snapshot) {
		path := filepath.Join(folder, name)
		if info, err := os.Stat(path); err == nil {
			there = file{path, info.ModTime()}
		}
	}
	return there
}

// moment writes when something was, and the day where that is not today.
func moment(then, now time.Time) string {
	if then.Format(time.DateOnly) == now.Format(time.DateOnly) {
		return then.Format("15:04")
	}
	return then.Format("2006-01-02 15:04")
}
