package watch

import (
	"os"
	"path/filepath"
	"time"

	"github.com/fsnotify/fsnotify"
)

// file is a watched file.
type file struct {
	told  os.FileInfo // as it was last told of, or when watching began
	last  os.FileInfo // as it was when it last stirred
	since time.Time   // when it began to stir; zero while it is still
	due   time.Time   // when to look whether it has settled
}

// run waits for files to stir and to settle, until the watcher is closed.
func (w *Watcher) run() {
	look := time.NewTicker(w.pace.look)
	defer look.Stop()
	settled := time.NewTimer(time.Hour)
	defer settled.Stop()
	var events chan fsnotify.Event // a nil channel is never ready
	var lost chan error
	if w.events != nil {
		events, lost = w.events.Events, w.events.Errors
	}
	for {
		select {
		case <-w.stop:
			return
		case event, open := <-events:
			if !open {
				events = nil
				continue
			}
			w.stirred(event)
		case _, open := <-lost:
			if !open {
				lost = nil
				continue
			}
			w.lookAtAll() // there were more changes than the system could keep
		case <-look.C:
			w.lookAtAll()
		case <-settled.C:
		}
		for _, path := range w.settled() {
			w.tell(path)
		}
		settled.Reset(w.untilDue())
	}
}

// tell calls changed unless the watcher was closed or the file forgotten meanwhile.
func (w *Watcher) tell(path string) {
	w.lock.Lock()
	wanted := !w.closed && w.files[path] != nil
	w.lock.Unlock()
	if wanted {
		w.changed(path)
	}
}

// stirred takes an event of the system.
func (w *Watcher) stirred(event fsnotify.Event) {
	w.lock.Lock()
	defer w.lock.Unlock()
	path := filepath.Clean(event.Name)
	if f := w.files[path]; f != nil {
		w.stir(f, stat(path))
	}
	// A folder that goes away takes its files along and is not heard of any more.
	if in := w.folders[path]; in != nil && (event.Has(fsnotify.Remove) || event.Has(fsnotify.Rename)) {
		in.heard = false
		for held, f := range w.files {
			if filepath.Dir(held) == path {
				w.stir(f, stat(held))
			}
		}
	}
}

// stir notes that a file is not what it was a moment ago.
func (w *Watcher) stir(f *file, now os.FileInfo) {
	at := time.Now()
	if f.since.IsZero() {
		f.since = at
	}
	f.last, f.due = now, at.Add(w.pace.settle)
}

// lookAtAll looks at every file that is still, and asks again about folders that the
// system does not tell of.
func (w *Watcher) lookAtAll() {
	w.lock.Lock()
	defer w.lock.Unlock()
	for path, in := range w.folders {
		w.listen(path, in)
	}
	for path, f := range w.files {
		if now := stat(path); f.since.IsZero() && !same(now, f.told) {
			w.stir(f, now)
		}
	}
}

// settled returns the files that changed and are left alone now.
func (w *Watcher) settled() []string {
	w.lock.Lock()
	defer w.lock.Unlock()
	var changed []string
	at := time.Now()
	for path, f := range w.files {
		if f.since.IsZero() || at.Before(f.due) {
			continue
		}
		now := stat(path)
		away := now == nil && at.Sub(f.since) < w.pace.gone
		writing := !same(now, f.last) && at.Sub(f.since) < w.pace.patience
		if away || writing {
			f.last, f.due = now, at.Add(w.pace.settle)
			continue
		}
		if !same(now, f.told) {
			changed = append(changed, path)
		}
		f.told, f.since = now, time.Time{}
	}
	return changed
}

// untilDue returns how long it is until a file may have settled.
func (w *Watcher) untilDue() time.Duration {
	w.lock.Lock()
	defer w.lock.Unlock()
	wait := time.Hour
	for _, f := range w.files {
		if !f.since.IsZero() {
			wait = min(wait, max(time.Until(f.due), 0))
		}
	}
	return wait
}
