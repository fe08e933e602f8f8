package watch

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
)

// limit is how long something may take that does happen; a slow machine takes long.
const limit = 30 * time.Second

// brisk is a pace at which the system has to tell of changes, as nobody looks.
func brisk() pace {
	return pace{settle: 20 * time.Millisecond, gone: 60 * time.Millisecond, patience: time.Second, look: time.Hour}
}

// looking is a pace at which somebody looks often.
func looking() pace {
	p := brisk()
	p.look = 10 * time.Millisecond
	return p
}

// bench is a watcher with what it told.
type bench struct {
	*Watcher
	t    *testing.T
	told chan string
}

func newBench(t *testing.T, heard bool, pace pace) *bench {
	b := &bench{t: t, told: make(chan string, 100)}
	var events *fsnotify.Watcher
	if heard {
		var err error
		if events, err = fsnotify.NewWatcher(); err != nil {
			t.Skip("the system tells of no changes:", err)
		}
	}
	b.Watcher = start(func(path string) { b.told <- path }, events, pace)
	t.Cleanup(b.Close)
	return b
}

func (b *bench) add(path string) {
	b.t.Helper()
	if err := b.Add(path); err != nil {
		b.t.Fatal(err)
	}
}

func (b *bench) want(path string) {
	b.t.Helper()
	select {
	case got := <-b.told:
		if got != path {
			b.t.Fatalf("told of %s, want %s", got, path)
		}
	case <-time.After(limit):
		b.t.Fatalf("nobody told of %s", path)
	}
}

func write(t *testing.T, path, text string) string {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// ways are the ways in which programs save.
var ways = map[string]func(t *testing.T, path, text string){
	"written in place": func(t *testing.T, path, text string) { write(t, path, text) },
	"renamed": func(t *testing.T, path, text string) {
		if err := os.Rename(write(t, path+".new", text), path); err != nil {
			t.Fatal(err)
		}
	},
	"deleted and written": func(t *testing.T, path, text string) {
		if err := os.Remove(path); err != nil {
			t.Fatal(err)
		}
		write(t, path, text)
	},
}

func TestSaving(t *testing.T) {
	for name, save := range ways {
		for _, heard := range []bool{true, false} {
			pace := looking()
			if heard {
				pace = brisk()
			}
			t.Run(name+", heard "+strconv.FormatBool(heard), func(t *testing.T) {
				b := newBench(t, heard, pace)
				folder := t.TempDir()
				path := write(t, filepath.Join(folder, "front.svg"), "first")
				other := write(t, filepath.Join(folder, "back.svg"), "another")
				b.add(path)
				for _, text := range []string{"second one", "third", "the fourth of them"} {
					write(t, other, text) // beside it, which is nobody's concern
					save(t, path, text)
					b.want(path)
				}
			})
		}
	}
}

func TestGoneAndBack(t *testing.T) {
	for _, heard := range []bool{true, false} {
		b := newBench(t, heard, looking())
		path := write(t, filepath.Join(t.TempDir(), "front.svg"), "first")
		b.add(path)
		if err := os.Remove(path); err != nil {
			t.Fatal(err)
		}
		b.want(path)
		write(t, path, "back again")
		b.want(path)
	}
}

func TestFolderGoneAndBack(t *testing.T) {
	b := newBench(t, true, looking())
	folder := filepath.Join(t.TempDir(), "art")
	path := filepath.Join(folder, "front.svg")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	b.add(write(t, path, "first"))
	if err := os.Rename(folder, folder+"-away"); err != nil {
		t.Fatal(err)
	}
	b.want(path)
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	write(t, path, "second")
	b.want(path)
	write(t, path, "and the third")
	b.want(path)
}

// Many writings close after each other are one change.
func TestManyWritingsAreToldOnce(t *testing.T) {
	slow := brisk()
	slow.settle = time.Second
	slow.patience = limit
	b := newBench(t, true, slow)
	path := write(t, filepath.Join(t.TempDir(), "front.svg"), "")
	b.add(path)
	for i := range 20 {
		write(t, path, "content "+strconv.Itoa(i*i*i))
	}
	b.want(path)
	if len(b.told) != 0 {
		t.Errorf("told %d times more", len(b.told))
	}
}

func TestNothingIsToldOfWhatIsNotWatched(t *testing.T) {
	b := newBench(t, true, brisk())
	folder := t.TempDir()
	forgotten := write(t, filepath.Join(folder, "forgotten.svg"), "first")
	path := write(t, filepath.Join(folder, "front.svg"), "first")
	b.add(path)
	b.add(forgotten)
	b.add(filepath.Join(folder, ".", "front.svg")) // the same once more
	b.Remove(forgotten)
	b.Remove(forgotten)
	write(t, forgotten, "second")
	write(t, path, "second")
	b.want(path) // and not the other, which was written before
	b.Remove(path)
	if len(b.folders) != 0 || len(b.files) != 0 {
		t.Errorf("%d folders and %d files are left", len(b.folders), len(b.files))
	}
}

func TestClosedWatcherTakesNothing(t *testing.T) {
	b := newBench(t, true, brisk())
	b.Close()
	b.Close()
	b.add(write(t, filepath.Join(t.TempDir(), "front.svg"), "first"))
	if len(b.files) != 0 {
		t.Error("a closed watcher watches")
	}
}

func TestMostFiles(t *testing.T) {
	b := newBench(t, false, brisk())
	folder := t.TempDir()
	for i := range mostFiles {
		b.add(filepath.Join(folder, strconv.Itoa(i)))
	}
	if err := b.Add(filepath.Join(folder, "one more")); err == nil {
		t.Error("there is no end of files")
	}
}

// New is what the program uses.
func TestNew(t *testing.T) {
	told := make(chan string, 10)
	w := New(func(path string) { told <- path })
	t.Cleanup(w.Close)
	path := write(t, filepath.Join(t.TempDir(), "front.svg"), "first")
	if err := w.Add(path); err != nil {
		t.Fatal(err)
	}
	write(t, path, "second one")
	select {
	case got := <-told:
		if got != path {
			t.Errorf("told of %s", got)
		}
	case <-time.After(limit):
		t.Error("nobody told")
	}
}
