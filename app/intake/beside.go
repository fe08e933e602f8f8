package intake

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
)

// lookBeside looks for the files of the project in the folder in which its own file lies,
// and watches those that hold what the project holds. A project keeps no paths of the
// computer on which it was made, so what lies beside it under the same name and is the
// same to the byte counts as where a file came from. Beside a bare bag.json that is
// where it was just read from.
func (i *Intake) lookBeside(path string) {
	if path == "" {
		return
	}
	folder := filepath.Dir(path)
	found := map[string]*origin{}
	held := map[string][]byte{}
	for _, name := range i.named {
		data, there := i.doc.File(name)
		if !there || i.origins[name] != nil {
			continue
		}
		from := &origin{path: filepath.Join(folder, name), unsure: true}
		i.origins[name], found[name], held[name] = from, from, data
		i.watch(from.path) // before it is compared, so that no change is missed
	}
	if len(found) == 0 {
		return
	}
	later := i.around.Later
	go func() {
		same := map[string]bool{}
		for name, data := range held {
			same[name] = holds(folder, name, data)
		}
		later(func() { i.compared(found, same) })
	}()
}

// compared keeps the files that are the same as those of the project, and forgets the
// others.
func (i *Intake) compared(found map[string]*origin, same map[string]bool) {
	if i.closed {
		return
	}
	for name, from := range found {
		switch {
		case i.origins[name] != from: // another project was opened, or the file replaced
		case same[name]:
			from.unsure = false
			i.readAgain(name, from)
		default:
			delete(i.origins, name)
		}
		i.unwatch(from.path)
	}
}

// Watches tells whether a file of the project is read again when it changes on disk.
func (i *Intake) Watches(name string) bool {
	from := i.origins[name]
	return from != nil && !from.unsure
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

// holds tells whether a file in a folder has the content. Links that lead out of the
// folder are not followed.
func holds(folder, name string, content []byte) bool {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return false
	}
	defer root.Close()
	// What is no plain file must not even be opened: a pipe makes whoever opens it wait.
	info, err := root.Stat(name)
	if err != nil || !info.Mode().IsRegular() || info.Size() != int64(len(content)) {
		return false
	}
	file, err := root.Open(name)
	if err != nil {
		return false
	}
	defer file.Close()
	part := make([]byte, 64<<10)
	for {
		count, err := file.Read(part)
		if !bytes.HasPrefix(content, part[:count]) {
			return false
		}
		content = content[count:]
		if err != nil {
			return err == io.EOF && len(content) == 0
		}
	}
}
