package window

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"

	"gussetwright/app/notice"
	"gussetwright/app/places"
	"gussetwright/app/session"
)

// projectEnding is what project files end in.
const projectEnding = ".gusset"

func closeWord() string { return lang.L("Close") }

// newProject begins a bag from scratch.
func (w *Window) newProject() {
	w.unlessUnsaved(lang.L("Save the changes before you begin a new bag?"), w.showWelcome)
}

// openAsked lets the user choose a project file.
func (w *Window) openAsked() {
	w.unlessUnsaved(lang.L("Save the changes before you open another project?"), func() {
		chooser := dialog.NewFileOpen(func(file fyne.URIReadCloser, err error) {
			if err != nil {
				w.alarm(err)
			}
			if file == nil {
				return
			}
			path := file.URI().Path()
			file.Close()
			w.open(path)
		}, w.window)
		chooser.SetFilter(storage.NewExtensionFileFilter([]string{projectEnding, ".json"}))
		places.Show(chooser, w.window, w.folderToBegin())
	})
}

// open opens the project at path; unsaved work has been asked about before.
func (w *Window) open(path string) {
	notes, err := w.file.Open(path)
	if err != nil {
		w.alarm(err)
		return
	}
	w.menu.showRecent()
	w.goToStep(stepBag)
	w.tellAll(notes)
}

// openRecent opens a file of the recent list.
func (w *Window) openRecent(path string) {
	w.unlessUnsaved(lang.L("Save the changes before you open another project?"), func() { w.open(path) })
}

// dropped opens a project that was dropped on the window.
func (w *Window) dropped(_ fyne.Position, files []fyne.URI) {
	for _, file := range files {
		path := file.Path()
		switch strings.ToLower(filepath.Ext(path)) {
		case projectEnding, ".json":
			w.openRecent(path)
			return
		}
	}
	if len(files) > 0 {
		w.bar.Say(notice.Alarm, fmt.Sprintf(lang.L("%s is not a project. Drop a .gusset file or a bag.json on the window."), files[0].Name()),
			notice.Answer{Label: closeWord()})
	}
}

// save saves the project, with what is being typed,, asking for a name where it has none.
func (w *Window) save() {
	if w.commitTyping() {
		w.saveThen(func() {})
	}
}

// saveThen saves and goes on with next once that has worked.
func (w *Window) saveThen(next func()) {
	if w.file.Path() == "" || w.doc.State().ReadOnly {
		w.saveAsThen(next)
		return
	}
	w.saved(w.file.Save(), next)
}

// saved goes on after saving, or says what went wrong and what can be done.
func (w *Window) saved(err error, next func()) {
	var changed *session.ChangedError
	switch {
	case err == nil:
		w.window.SetTitle(w.file.Title(lang.L("untitled")))
		w.menu.showRecent()
		next()
	case errors.As(err, &changed):
		w.bar.Say(notice.Ask, err.Error(),
			notice.Answer{Label: lang.L("Replace it"), Do: func() { w.saved(w.file.Overwrite(), next) }},
			notice.Answer{Label: lang.L("Save as…"), Main: true, Do: func() { w.saveAsThen(next) }},
			notice.Answer{Label: lang.L("Cancel")})
	default:
		w.bar.Say(notice.Alarm, err.Error(),
			notice.Answer{Label: lang.L("Save as…"), Main: true, Do: func() { w.saveAsThen(next) }},
			notice.Answer{Label: closeWord()})
	}
}

func (w *Window) saveAs() { w.saveAsThen(func() {}) }

// saveAsThen asks for a name and saves under it.
func (w *Window) saveAsThen(next func()) {
	question := askFile{window: w, title: lang.L("Save the project as"), ending: projectEnding,
		then: func(path string) { w.saved(w.file.SaveAs(path), next) }}
	question.ask(w.folderToBegin(), w.baseName()+projectEnding)
}

// unlessUnsaved goes on at once when everything is saved, else asks first.
func (w *Window) unlessUnsaved(question string, next func()) {
	if !w.doc.State().Dirty {
		next()
		return
	}
	w.bar.Say(notice.Ask, question,
		notice.Answer{Label: lang.L("Save"), Main: true, Do: func() { w.saveThen(next) }},
		notice.Answer{Label: lang.L("Do not save"), Do: next},
		notice.Answer{Label: lang.L("Cancel")})
}

// close ends the program once nothing is unsaved.
func (w *Window) close() {
	w.unlessUnsaved(lang.L("Save the changes before you close the window?"), func() {
		w.set.SetWindowSize(w.window.Canvas().Size())
		w.keeper.close()
		w.files.Close()
		w.blank.Close()
		w.folded.Close()
		w.findings.Close()
		w.window.Close()
	})
}
