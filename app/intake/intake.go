// Package intake brings artwork from disk into the document. It remembers where each
// file came from, also from one day to the next, finds those that lie beside the project,
// and reads them again when the program that draws them saves.
package intake

import (
	"path/filepath"
	"slices"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/app/watch"
	"gussetwright/geometry/phrase"
)

// Around is what an intake needs of the window. All but Later are called on the goroutine
// of the window.
type Around struct {
	Later  func(func())         // does something on the goroutine of the window, now or soon
	Tell   func(phrase.Phrase)  // something happened that the user should know
	Alarm  func(error)          // something failed
	Busy   func(names []string) // these files are being read and opened; none when all is done
	Placed func(index int)      // a piece was added to Spec.Artwork
	// Path returns the absolute path of the file of the project, or "" while it has none.
	// Where it is nil, nothing is looked for on disk when a project is opened.
	Path func() string
}

// Intake brings files into a document, one after the other. It belongs to the goroutine
// of the window; reading is done on another, and opening by the gallery.
type Intake struct {
	doc     *document.Document
	gallery document.Gallery
	set     *settings.Settings
	around  Around
	watcher *watch.Watcher
	stop    func()

	queue   []*arrival         // the first of them is under way
	origins map[string]*origin // by the name in the project
	watched map[string]bool    // paths
	named   []string           // the files that the bag names
	loads   int                // of the document
	project string             // the file beside which was looked for files
	sought  bool               // files were looked for
	seeking int                // how often they are being looked for
	newer   bool               // a file was read again since the project was saved
	closed  bool
}

// origin is where a file of the project came from.
type origin struct {
	path    string // absolute
	sum     string // of the content that the project has of it
	changed bool   // it is another one on disk than what was read
	failed  bool   // it was told that the file cannot be read any more
	unsure  bool   // it is still being compared with what the project holds
}

// New returns an intake for a document that is shown by the gallery. Call Opened when
// the gallery has opened more.
func New(doc *document.Document, gallery document.Gallery, set *settings.Settings, around Around) *Intake {
	i := &Intake{
		doc: doc, gallery: gallery, set: set, around: around,
		origins: map[string]*origin{}, watched: map[string]bool{}, loads: doc.State().Loads,
	}
	i.watcher = watch.New(func(path string) { around.Later(func() { i.changed(path) }) })
	i.stop = doc.Listen(i.follow)
	return i
}

// Close ends watching and forgets what is still to be read.
func (i *Intake) Close() {
	i.closed = true
	i.queue = nil
	i.stop()
	i.watcher.Close()
}

// Add reads files and puts each on a place of the bag, one after the other and each as
// one step. Without a place each goes on a face that has no artwork: the front, then the
// back, then a gusset; where all have some it goes on top of the front, and the user is
// told. A drawing that is as large as the blank goes on the whole blank instead.
func (i *Intake) Add(place string, paths ...string) {
	for _, path := range paths {
		i.order(&arrival{path: path, page: 1, take: func(a *arrival) { i.place(a, place) }})
	}
}

// Replace reads a file and puts it in the place of that of a piece of artwork, as one
// step.
func (i *Intake) Replace(index int, path string) {
	i.order(&arrival{path: path, page: 1, take: func(a *arrival) { i.replace(a, index) }})
}

// ChooseProfile reads the ICC profile of the printing condition.
func (i *Intake) ChooseProfile(path string) {
	i.order(&arrival{path: path, profile: true, take: i.useProfile})
}

// Opened says that the gallery has opened more.
func (i *Intake) Opened() { i.look() }

// follow takes a new state of the document.
func (i *Intake) follow(state document.State) {
	if state.Loads != i.loads {
		i.loads = state.Loads
		i.forget()
	}
	if names := state.Spec.FileNames(); !slices.Equal(names, i.named) {
		i.named = names
		for name, from := range i.origins {
			i.readAgain(name, from)
		}
	}
	if path := i.path(); i.around.Path != nil && (path != i.project || !i.sought) {
		i.project, i.sought = path, true
		i.seek(path)
	}
	if i.newer && !state.Dirty {
		i.newer = false
		i.rememberAll()
	}
	if len(i.queue) > 0 && !state.Dragging {
		i.around.Later(i.look) // what was opened during a drag waits for its end
	}
}

func (i *Intake) path() string {
	if i.around.Path == nil {
		return ""
	}
	return i.around.Path()
}

// watch watches a file from now on, until another project is opened.
func (i *Intake) watch(path string) {
	if i.watched[path] {
		return
	}
	i.watched[path] = true
	if err := i.watcher.Add(path); err != nil {
		i.around.Alarm(err)
	}
}

// forget ends watching and drops what is on its way: another project was opened.
func (i *Intake) forget() {
	for path := range i.watched {
		i.watcher.Remove(path)
	}
	clear(i.watched)
	clear(i.origins)
	i.project, i.sought, i.newer = "", false, false
	i.queue = nil
	i.tellBusy()
}

// changed reads a file again that is another one on disk. Where the bag does not name
// it, that is put off until it does, as after undo.
func (i *Intake) changed(path string) {
	if i.closed {
		return
	}
	for name, from := range i.origins {
		if from.path == path {
			from.changed = true
			i.readAgain(name, from)
		}
	}
}

func (i *Intake) readAgain(name string, from *origin) {
	if from.changed && !from.unsure && slices.Contains(i.named, name) && !i.awaits(name) {
		from.changed = false
		i.order(i.again(name, from))
	}
}

// awaits tells whether a file is to be read again already.
func (i *Intake) awaits(name string) bool {
	for at, a := range i.queue {
		if a.again == name && at > 0 {
			return true
		}
	}
	return false
}

// room returns how many bytes further files may have. A file that is read again leaves
// the room that it takes.
func (i *Intake) room(again string) int64 {
	held := i.doc.Project()
	old, _ := i.doc.File(again)
	return (&project.Project{Spec: held.Spec, Files: held.Files}).Room() + int64(len(old))
}

// tellBusy says what is being read and opened.
func (i *Intake) tellBusy() {
	var names []string
	for _, a := range i.queue {
		names = append(names, filepath.Base(a.path))
	}
	i.around.Busy(names)
}

// Watches tells whether a file of the project is read again when it changes on disk.
func (i *Intake) Watches(name string) bool {
	from := i.origins[name]
	return from != nil && !from.unsure && !from.failed
}

// unwatch ends watching a file that nothing comes from.
func (i *Intake) unwatch(path string) {
	for _, from := range i.origins {
		if from.path == path {
			return
		}
	}
	for _, a := range i.queue {
		if a.path == path {
			return
		}
	}
	if i.watched[path] {
		delete(i.watched, path)
		i.watcher.Remove(path)
	}
}
