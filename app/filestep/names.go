package filestep

import (
	"fmt"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/geometry/check"
)

// list shows the files that will be written, a line each.
type list struct {
	*entry.Column
	paths   []string // what it speaks of, or nil when it must look anew
	lines   []*entry.Text
	written []string           // what was written last,
	of      *document.Snapshot // and of which bag
	own     map[string]bool    // all that was written since the window was opened
}

func newList() *list { return &list{Column: entry.NewColumn(0.5), own: map[string]bool{}} }

// forget makes the list look at the disk anew.
func (l *list) forget() { l.paths = nil }

// wrote notes that files of a bag were just written.
func (l *list) wrote(paths []string, of *document.Snapshot) {
	l.written, l.of = paths, of
	l.owns(paths)
}

// owns notes that files are of this window and may be replaced without a question.
func (l *list) owns(paths []string) {
	for _, path := range paths {
		l.own[path] = true
	}
	l.forget()
}

// foreign returns which of the files are there without having been written from here.
func (l *list) foreign() (paths []string) {
	for _, path := range l.paths {
		if !l.own[path] && isThere(path) {
			paths = append(paths, path)
		}
	}
	return paths
}

// show lists the paths for files of a bag and says which of them are there already. It
// looks at the disk only when the list is another one.
func (l *list) show(folder string, paths []string, of *document.Snapshot) {
	if of != l.of && l.written != nil {
		l.wrote(nil, nil) // those that are there are of another bag
	}
	if l.paths != nil && slices.Equal(paths, l.paths) {
		return
	}
	l.paths = paths
	l.say(l.wordsFor(folder, paths))
}

func (l *list) wordsFor(folder string, paths []string) []string {
	switch {
	case len(paths) == 0:
		return []string{lang.L("Nothing is ticked.")}
	case folder == "":
		return []string{lang.L("Enter a folder.")}
	}
	var words []string
	for _, path := range paths {
		line := "• " + filepath.Base(path)
		switch {
		case !isThere(path):
		case slices.Contains(l.written, path):
			line = fmt.Sprintf(lang.L("%s – written"), line)
		default:
			line = fmt.Sprintf(lang.L("%s – replaces the file that is there"), line)
		}
		words = append(words, line)
	}
	return words
}

// say shows a line for each of the texts. Lines are used again.
func (l *list) say(words []string) {
	for len(l.lines) < len(words) {
		line := entry.NewText("", entry.Small)
		l.lines = append(l.lines, line)
		l.Add(line)
	}
	for i, line := range l.lines {
		if i < len(words) {
			line.SetText(words[i])
		} else {
			line.SetText("")
		}
	}
	l.Grown()
}

// showFiles lists what will be written.
func (s *Step) showFiles(state document.State) {
	folder := s.folder.path()
	paths := []string{}
	for _, kind := range s.kinds.chosen() {
		for _, name := range kind.Files(s.project(), state.Snapshot) {
			paths = append(paths, filepath.Join(folder, name))
		}
	}
	if !slices.Equal(paths, s.list.paths) {
		s.question.withdraw() // it was about others
	}
	s.list.show(folder, paths, state.Snapshot)
}

// warn says beside the button why files are of little use or cannot be written.
func (s *Step) warn(state document.State) {
	switch {
	case state.Err != nil:
		s.warning.Say(check.Error, lang.L("The bag cannot be drawn with what is entered, so no files can be written. Mend the entries that say so."), nil)
	case check.HasError(state.Snapshot.Findings):
		s.warning.Say(check.Warning, lang.L("This bag cannot be made as it is: see the errors among the findings. The files can be written all the same, but do not cut from them."), nil)
	default:
		s.warning.Say(check.Note, "", nil)
	}
}

// showButton lets files be written when there is all that takes.
func (s *Step) showButton(state document.State) {
	possible := state.Err == nil && len(s.list.paths) > 0 && s.folder.path() != "" && !s.runner.Busy()
	switch {
	case possible && s.button.Disabled():
		s.button.Enable()
	case !possible && !s.button.Disabled():
		s.button.Disable()
	}
}
