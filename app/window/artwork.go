package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/artstep"
	"gussetwright/app/document"
	"gussetwright/app/gallery"
	"gussetwright/app/inspector"
	"gussetwright/app/intake"
	"gussetwright/app/notice"
	"gussetwright/app/words"
	"gussetwright/geometry/phrase"
)

// newArtwork makes what brings artwork onto the bag: the gallery that opens it, the
// intake that reads it from disk, the step, and the inspector that looks at its pixels.
func (w *Window) newArtwork(later func(func())) {
	w.gallery = gallery.New(func() {
		later(func() {
			w.doc.Renew()
			w.intake.Opened()
		})
	})
	w.intake = intake.New(w.doc, w.gallery, w.set, intake.Around{
		Later:  later,
		Tell:   func(p phrase.Phrase) { w.bar.SayAfter(notice.Tell, words.Of(p), notice.Answer{Label: closeWord()}) },
		Alarm:  func(err error) { w.bar.SayAfter(notice.Alarm, words.Error(err), notice.Answer{Label: closeWord()}) },
		Busy:   w.foot.Reading,
		Placed: func(index int) { w.art.Choose(index) },
		Path:   w.file.Path,
	})
	w.art = artstep.New(w.doc, w.look, w.set, w.intake, w.window)
	w.doc.ShowArt(w.gallery)
	w.doc.Listen(func(document.State) {
		w.gallery.Forget(func(name string) []byte {
			data, _ := w.doc.File(name)
			return data
		})
	})
	w.inspector = inspector.New(w.doc, later)
}

func (w *Window) closeArtwork() {
	w.inspector.Close()
	w.intake.Close()
	w.gallery.Close()
}

// addArtwork lets the user choose a file to put on the bag.
func (w *Window) addArtwork() {
	if w.bagForArtwork() {
		w.goToStep(stepArtwork)
		w.art.AskForFiles()
	}
}

// dropArtwork puts files on the panel at a place of the window, and on free faces where
// there is none.
func (w *Window) dropArtwork(at fyne.Position, paths []string) {
	if len(paths) == 0 || !w.bagForArtwork() {
		return
	}
	panel := ""
	if w.atDesk() {
		panel, _ = w.blank.PanelAt(at)
	}
	w.goToStep(stepArtwork)
	w.intake.Add(panel, paths...)
}

// bagForArtwork tells whether there is a bag to put artwork on, and says so where there
// is none.
func (w *Window) bagForArtwork() bool {
	if !w.begun {
		w.tell(lang.L("Artwork goes on a bag. Begin one or open a project first."))
	}
	return w.begun
}
