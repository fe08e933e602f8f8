package window

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"

	"gussetwright/app/artstep"
	"gussetwright/app/notice"
	"gussetwright/app/places"
	"gussetwright/app/session"
	"gussetwright/app/words"
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
				w.alarm(fmt.Errorf(lang.L("the file cannot be opened: %s; choose another"), err))
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

// dropped opens a project that was dropped on the window, and puts artwork on the bag.
func (w *Window) dropped(at fyne.Position, files []fyne.URI) {
	var pictures, others []string
	for _, file := range files {
		path := filepath.FromSlash(file.Path())
		switch {
		case slices.Contains([]string{projectEnding, ".json"}, strings.ToLower(filepath.Ext(path))):
			w.openRecent(path)
			return
		case artstep.IsArtwork(path):
			pictures = append(pictures, path)
		case artstep.IsProfile(path) && w.begun:
			w.intake.ChooseProfile(path)
		default:
			others = append(others, file.Name())
		}
	}
	w.dropArtwork(at, pictures)
	if len(others) > 0 {
		w.bar.Say(notice.Alarm, fmt.Sprintf(lang.L("%s is neither a project nor artwork. Drop a .gusset file or a bag.json on the window, or PNG, JPEG, TIFF, WebP, SVG or PDF files on a panel of the blank."), others[0]),
			notice.Answer{Label: closeWord()})
	}
}

// save saves the project, with what is being typed, asking for a name where it has none.
func (w *Window) save() {
	if w.commitTyping() {
		w.saveThen(func() {})
	}
}

// saveThen saves and goes on with next once that has worked.
func (w *Window) saveThen(next func()) {
	w.saver.after(func() {
		if w.file.Path() == "" || w.doc.State().ReadOnly {
			w.saveAsThen(next)
			return
		}
		w.write(w.file.BeginSave, next)
	})
}

// write saves away from the window, which goes on meanwhile.
func (w *Window) write(begin func() *session.Task, next func()) {
	w.saver.after(func() {
		task := begin()
		w.saver.write(task.Write, func() { w.saved(task.End(), next) })
	})
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
		w.bar.Say(notice.Ask, words.Error(err),
			notice.Answer{Label: lang.L("Replace it"), Do: func() { w.write(w.file.BeginOverwrite, next) }},
			notice.Answer{Label: lang.L("Open the other, drop mine"), Do: func() { w.open(changed.Path) }},
			notice.Answer{Label: lang.L("Save as…"), Main: true, Do: func() { w.saveAsThen(next) }},
			notice.Answer{Label: lang.L("Cancel")})
	default:
		w.bar.Say(notice.Alarm, words.Error(err),
			notice.Answer{Label: lang.L("Save as…"), Main: true, Do: func() { w.saveAsThen(next) }},
			notice.Answer{Label: closeWord()})
	}
}

func (w *Window) saveAs() { w.saveAsThen(func() {}) }

// saveAsThen asks for a name and saves under it.
func (w *Window) saveAsThen(next func()) {
	question := askFile{
		window: w, title: lang.L("Save the project as"), ending: projectEnding,
		then: func(path string) {
			w.write(func() *session.Task { return w.file.BeginSaveAs(path) }, next)
		},
	}
	question.ask(w.folderToBegin(), w.baseName()+projectEnding)
}

// unlessUnsaved goes on at once when everything is saved, else asks first. What is
// being typed counts as work where it can be read, and what is being saved is waited for.
func (w *Window) unlessUnsaved(question string, next func()) {
	w.saver.after(func() { w.askUnlessSaved(question, next) })
}

func (w *Window) askUnlessSaved(question string, next func()) {
	w.commitTyping()
	if !w.doc.State().Dirty {
		next()
		return
	}
	w.bar.Say(notice.Ask, question,
		notice.Answer{Label: lang.L("Save"), Main: true, Do: func() {
			w.saveThen(func() { w.askUnlessSaved(question, next) }) // the bag may change while a slow disk writes
		}},
		notice.Answer{Label: lang.L("Do not save"), Do: next},
		notice.Answer{Label: lang.L("Cancel")})
}

// close ends the program once nothing is unsaved.
func (w *Window) close() {
	w.unlessUnsaved(lang.L("Save the changes before you close the window?"), func() {
		w.set.SetWindowSize(w.window.Canvas().Size())
		w.desk.remember()
		w.keeper.close()
		w.tidy.close()
		w.closeArtwork()
		w.files.Close()
		w.meeting.Close()
		w.lesson.Close()
		w.blank.Close()
		w.folded.Close()
		w.findings.Close()
		w.window.Close()
	})
}
