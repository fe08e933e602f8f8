// Package watch tells when files on disk change, as they do when the program that
// draws them saves.
package watch

import (
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/fsnotify/fsnotify"

	"gussetwright/geometry/phrase"
)

// mostFiles bounds the files that are watched; a bag has at most 64 pieces of artwork.
const mostFiles = 256

// pace is how fast a watcher goes.
type pace struct {
	settle   time.Duration // how long a file must be left alone before its change counts
	gone     time.Duration // how long a file may be away, as some programs delete before they write
	patience time.Duration // how long a change is put off at most while writing goes on
	look     time.Duration // between two looks at files of whose changes nobody tells
}

func usualPace() pace {
	return pace{settle: 300 * time.Millisecond, gone: time.Second, patience: 5 * time.Second, look: 2 * time.Second}
}

// Watcher watches files. Programs save by writing another file and renaming it, so it
// is their folders that the system is asked about. The files are looked at now and then
// as well, for there are disks, those of a network above all, whose changes no system
// tells of. Its methods may be called from any goroutine.
type Watcher struct {
	changed func(path string)
	pace    pace
	events  *fsnotify.Watcher // nil where the system gives none
	stop    chan struct{}

	lock    sync.Mutex
	files   map[string]*file
	folders map[string]*folder
	closed  bool
}

// folder is a folder with watched files in it.
type folder struct {
	files int
	heard bool // the system tells of changes in it
}

// New returns a watcher that watches nothing yet. changed is called, on a goroutine of
// the watcher, after a file became another one or went away. Close the watcher when it
// is not needed any more.
func New(changed func(path string)) *Watcher {
	events, err := fsnotify.NewWatcher()
	if err != nil {
		events = nil // looking at the files does it too
	}
	return start(changed, events, usualPace())
}

func start(changed func(string), events *fsnotify.Watcher, pace pace) *Watcher {
	w := &Watcher{
		changed: changed, pace: pace, events: events, stop: make(chan struct{}),
		files: map[string]*file{}, folders: map[string]*folder{},
	}
	go w.run()
	return w
}

// Add watches a file from now on, whether it is there or not. Whoever reads it should
// do so afterwards, or a change in between is missed. There is an error only where more
// files are watched than anybody needs.
func (w *Watcher) Add(path string) error {
	path = filepath.Clean(path)
	w.lock.Lock()
	defer w.lock.Unlock()
	if w.closed || w.files[path] != nil {
		return nil
	}
	if len(w.files) == mostFiles {
		return phrase.Errorf("watch %s: %d files are watched already, which is the most; load it again by hand when it changes", path, mostFiles)
	}
	in := w.folders[filepath.Dir(path)]
	if in == nil {
		in = &folder{}
		w.folders[filepath.Dir(path)] = in
		w.listen(filepath.Dir(path), in)
	}
	in.files++
	w.files[path] = &file{told: stat(path)}
	return nil
}

// listen asks the system to tell of changes in a folder, as far as it does.
func (w *Watcher) listen(path string, in *folder) {
	if w.events != nil && !in.heard {
		in.heard = w.events.Add(path) == nil
	}
}

// Remove watches a file no longer.
func (w *Watcher) Remove(path string) {
	path = filepath.Clean(path)
	w.lock.Lock()
	defer w.lock.Unlock()
	if w.files[path] == nil {
		return
	}
	delete(w.files, path)
	in := w.folders[filepath.Dir(path)]
	if in.files--; in.files > 0 {
		return
	}
	delete(w.folders, filepath.Dir(path))
	if w.events != nil && in.heard {
		_ = w.events.Remove(filepath.Dir(path)) // the folder may be gone, which is as good
	}
}

// Close ends watching: no call of changed begins any more.
func (w *Watcher) Close() {
	w.lock.Lock()
	defer w.lock.Unlock()
	if w.closed {
		return
	}
	w.closed = true
	close(w.stop)
	if w.events != nil {
		_ = w.events.Close() // nothing is left to be lost
	}
}

// stat returns what the disk says of a file, nil where there is none.
func stat(path string) os.FileInfo {
	info, err := os.Stat(path)
	if err != nil {
		return nil
	}
	return info
}

// same tells whether nothing happened to a file.
func same(a, b os.FileInfo) bool {
	if a == nil || b == nil {
		return a == nil && b == nil
	}
	return a.Size() == b.Size() && a.ModTime().Equal(b.ModTime()) && os.SameFile(a, b)
}
