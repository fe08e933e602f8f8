package intake

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

// project returns a project with files on the front.
func (b *bench) project(files map[string][]byte) project.Project {
	spec := bag.Default()
	for _, name := range slices.Sorted(maps.Keys(files)) {
		spec.Artwork = append(spec.Artwork, bag.NewArtwork(name, "front"))
	}
	return project.Project{Spec: spec, Files: files}
}

// open opens the project file of the bench as the window does: the path is known before
// the document changes.
func (b *bench) open(name string) {
	b.t.Helper()
	path := filepath.Join(b.folder, name)
	read, err := project.Open(path)
	if err != nil {
		b.t.Fatal(err)
	}
	b.path = path
	b.doc.Load(read)
}

// found waits until it is known where files come from, and returns their names.
func (b *bench) found() []string {
	b.t.Helper()
	b.until("the end of looking", func() bool { return b.seeking == 0 })
	return slices.Sorted(maps.Keys(b.origins))
}

func (b *bench) mustWatch(names ...string) {
	b.t.Helper()
	if got := b.found(); !slices.Equal(got, names) {
		b.t.Errorf("files from the folder are %q, want %q", got, names)
	}
	var paths []string
	for _, name := range names {
		paths = append(paths, filepath.Join(b.folder, name))
	}
	if got := slices.Sorted(maps.Keys(b.watched)); !slices.Equal(got, paths) {
		b.t.Errorf("watched are %q, want %q", got, paths)
	}
}

// What lies beside a project file and is what the project holds is read again when it
// changes; what is another file, or none, is left alone.
func TestArtworkBesideAProjectIsWatched(t *testing.T) {
	b := newBench(t)
	held := map[string][]byte{
		"leaf.svg": svg(50, 50), "other.svg": svg(50, 50), "longer.svg": svg(50, 50), "gone.svg": svg(50, 50),
		"folder.svg": svg(50, 50), "link.svg": svg(50, 50),
	}
	if err := project.Save(filepath.Join(b.folder, "tea.gusset"), b.project(held)); err != nil {
		t.Fatal(err)
	}
	b.write("leaf.svg", svg(50, 50))
	b.write("other.svg", svg(50, 60))
	b.write("longer.svg", append(svg(50, 50), '\n'))
	if err := os.Mkdir(filepath.Join(b.folder, "folder.svg"), 0o777); err != nil {
		t.Fatal(err)
	}
	elsewhere := filepath.Join(t.TempDir(), "leaf.svg")
	if err := os.WriteFile(elsewhere, svg(50, 50), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(elsewhere, filepath.Join(b.folder, "link.svg")); err != nil {
		t.Log(err) // not every system lets everybody make links
	}
	b.open("tea.gusset")
	b.mustWatch("leaf.svg")
	b.write("other.svg", svg(70, 70))
	b.write("leaf.svg", svg(60, 55))
	b.until("reading again", func() bool { return len(b.told) == 1 })
	if want := "leaf.svg was changed and read again. Its size is 60 × 55 mm now; it was 50 × 50 mm."; b.told[0] != want {
		t.Errorf("told %q, want %q", b.told[0], want)
	}
	if kept, _ := b.doc.File("other.svg"); !bytes.Equal(kept, held["other.svg"]) || len(b.alarms) > 0 {
		t.Errorf("content %q, alarms %v", kept, b.alarms)
	}
	if !b.doc.State().Dirty || b.undoSteps() != 0 {
		t.Errorf("dirty %v after %d steps", b.doc.State().Dirty, b.undoSteps())
	}
}

// The artwork of a bare bag.json is what lies beside it.
func TestArtworkOfABareProjectIsWatched(t *testing.T) {
	b := newBench(t)
	b.write("leaf.svg", svg(50, 50))
	b.write("tea.svg", svg(40, 40))
	var text bytes.Buffer
	if err := project.Encode(&text, b.project(map[string][]byte{"leaf.svg": nil, "tea.svg": nil}).Spec); err != nil {
		t.Fatal(err)
	}
	b.write("bag.json", text.Bytes())
	b.open("bag.json")
	b.mustWatch("leaf.svg", "tea.svg")
	b.write("tea.svg", svg(45, 40))
	b.until("reading again", func() bool { return len(b.told) == 1 })
	if !b.toldOf("tea.svg was changed and read again. Its size is 45 × 40 mm now") {
		t.Errorf("told %q", b.told)
	}
}

// A change that comes while files are compared is not missed.
func TestChangeWhileBeingCompared(t *testing.T) {
	b := newBench(t)
	b.write("leaf.svg", svg(50, 50))
	if err := project.Save(filepath.Join(b.folder, "tea.gusset"), b.project(map[string][]byte{"leaf.svg": svg(50, 50)})); err != nil {
		t.Fatal(err)
	}
	b.open("tea.gusset")
	b.mustWatch("leaf.svg")
	from := b.origins["leaf.svg"]
	from.unsure = true // as if it were still being compared
	again := &search{name: "leaf.svg", from: from, found: same, trials: []trial{{path: from.path}}}
	b.write("leaf.svg", svg(60, 60))
	b.until("a change", func() bool { return from.changed })
	if len(b.queue) > 0 {
		t.Error("a file is read again of which nobody knows yet whether it is the one")
	}
	b.tried([]*search{again})
	b.until("reading again", func() bool { return len(b.told) == 1 })
	if !b.toldOf("60 × 60 mm now") {
		t.Errorf("told %q", b.told)
	}
}

// Another project ends watching, one without a file has nothing beside it, and one that
// is saved somewhere is looked for there.
func TestWatchingFollowsTheProject(t *testing.T) {
	b := newBench(t)
	b.write("leaf.svg", svg(50, 50))
	held := b.project(map[string][]byte{"leaf.svg": svg(50, 50)})
	if err := project.Save(filepath.Join(b.folder, "tea.gusset"), held); err != nil {
		t.Fatal(err)
	}
	b.open("tea.gusset")
	b.mustWatch("leaf.svg")
	b.open("tea.gusset")
	b.mustWatch("leaf.svg")
	b.path = ""
	b.doc.Load(held)
	b.mustWatch()
	b.path = filepath.Join(b.folder, "saved.gusset")
	b.doc.MarkSaved()
	b.mustWatch("leaf.svg")

	// A file that was added from elsewhere comes from there.
	other := filepath.Join(t.TempDir(), "leaf.svg")
	if err := os.WriteFile(other, svg(50, 50), 0o644); err != nil {
		t.Fatal(err)
	}
	b.Add("back", other)
	b.idle()
	b.path = filepath.Join(b.folder, "again.gusset")
	b.doc.MarkSaved()
	if b.found(); b.origins["leaf.svg"].path != other {
		t.Errorf("leaf.svg comes from %s", b.origins["leaf.svg"].path)
	}
}

// The project file tells nothing of the computer on which it was made.
func TestNoPathIsSaved(t *testing.T) {
	b := newBench(t)
	b.Add("front", b.write("leaf.svg", svg(50, 50)))
	b.idle()
	var text bytes.Buffer
	if err := project.Encode(&text, b.doc.Project().Spec); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(text.String(), filepath.Base(b.folder)) {
		t.Errorf("the folder stands in %s", &text)
	}
}
