package window

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/jobs"
	"gussetwright/app/meeting"
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
	w.window.SetMainMenu(nil)
	w.window.SetFullScreen(true)
	w.meeting.Open(w.folded.Reference())
}

// endMeeting brings everything back to where it was.
func (w *Window) endMeeting() {
	w.meeting.Shut()
	w.window.SetFullScreen(false)
	w.window.SetMainMenu(w.menu.main)
	w.blank.Resize(w.resting[0])
	w.folded.Resize(w.resting[1])
	w.window.Canvas().Unfocus()
}

// writeProof writes the proof for the client, and says in the meeting view where it is.
func (w *Window) writeProof() {
	w.meeting.Say(lang.L("The proof is being written…"))
	w.files.Deliver("proof", func(result jobs.Result) {
		if result.Err != nil {
			w.meeting.Say(fmt.Sprintf(lang.L("The proof cannot be written: %s"), words.Error(result.Err)))
			return
		}
		w.meeting.Say(fmt.Sprintf(lang.L("The proof is in %s"), strings.Join(result.Paths, ", ")))
	})
}
