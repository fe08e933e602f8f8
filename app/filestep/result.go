package filestep

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/jobs"
	"gussetwright/app/places"
	"gussetwright/app/words"
	"gussetwright/geometry/check"
)

// result is what there is to say after writing; which files they are says the list of
// the step.
type result struct {
	*entry.Column
	failure *entry.Message // what went wrong
	remedy  *entry.Text    // what to do about it
	words   *entry.Text    // what there is
	open    *widget.Button
	folder  string // that can be opened, or empty
}

func newResult() *result {
	r := &result{
		failure: entry.NewMessage(), remedy: entry.NewText("", entry.Small),
		words: entry.NewText("", entry.Heading),
	}
	r.open = widget.NewButtonWithIcon(lang.L("Open folder"), theme.FolderOpenIcon(), r.openFolder)
	r.Column = entry.NewColumn(1.5, r.failure, r.remedy, r.words, container.NewHBox(r.open))
	r.clear()
	return r
}

// clear takes back what was said. The caller shows what comes in its place.
func (r *result) clear() {
	r.failure.Say(check.Note, "", nil)
	r.remedy.SetText("")
	r.words.SetText("")
	r.folder = ""
	r.Hide()
}

func (r *result) show() {
	r.open.Hidden = r.folder == ""
	r.Show()
	r.Grown()
}

func (r *result) succeed(folder string, paths []string) {
	r.folder = folder
	r.words.SetText(fmt.Sprintf(lang.L("Files written: %d"), len(paths)))
	r.show()
}

func (r *result) cancelled() {
	r.words.SetText(lang.L("Cancelled. Nothing was written."))
	r.show()
}

func (r *result) fail(failed jobs.Result) {
	r.failure.Say(check.Error, words.Error(failed.Err), nil)
	var place *fs.PathError
	if errors.As(failed.Err, &place) {
		r.remedy.SetText(lang.L("Choose another folder, or see that there is room and that you may write there; then write the files again."))
	}
	if len(failed.Paths) > 0 {
		r.folder = filepath.Dir(failed.Paths[0])
		r.words.SetText(fmt.Sprintf(lang.L("Files written before that: %d"), len(failed.Paths)))
	}
	r.show()
}

// openFolder shows the folder in the desktop's file manager.
func (r *result) openFolder() {
	if err := places.Open(r.folder); err != nil {
		r.failure.Say(check.Warning, fmt.Sprintf(lang.L("The folder cannot be opened from here (%v); open it in your file manager."), err), nil)
	}
}
