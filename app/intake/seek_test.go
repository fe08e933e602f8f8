package intake

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/app/project"
	"gussetwright/app/settings"
)

// saved puts a drawing from another folder on the bag and saves the project, and returns
// the path of the drawing. The intake is then another one, with what the settings remember:
// it is the next day.
func (b *bench) saved(drawing []byte) string {
	b.t.Helper()
	path := filepath.Join(b.t.TempDir(), "leaf.svg")
	b.put(path, drawing)
	b.Add("front", path)
	b.idle()
	b.save()
	b.nextDay()
	return path
}

func (b *bench) put(path string, data []byte) {
	b.t.Helper()
	if err := os.WriteFile(path, data, 0o644); err != nil {
		b.t.Fatal(err)
	}
}

func (b *bench) save() {
	b.t.Helper()
	b.path = filepath.Join(b.folder, "tea.gusset")
	if err := project.Save(b.path, b.doc.Project()); err != nil {
		b.t.Fatal(err)
	}
	b.doc.MarkSaved()
}

func (b *bench) nextDay() {
	b.Close()
	b.Intake = New(b.doc, b.gallery, b.set, b.around)
	b.t.Cleanup(b.Close)
	b.told = nil
}

// Artwork from any folder is followed again when its project is opened again, wherever
// the project lies by then.
func TestArtworkIsFollowedTheNextDay(t *testing.T) {
	b := newBench(t)
	path := b.saved(svg(50, 50))
	moved := filepath.Join(b.folder, "moved")
	if err := os.Mkdir(moved, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(b.path, filepath.Join(moved, "other.gusset")); err != nil {
		t.Fatal(err)
	}
	b.open("moved/other.gusset")
	b.found()
	if !b.Watches("leaf.svg") || b.origins["leaf.svg"].path != path {
		t.Fatalf("origins %+v", b.origins)
	}
	b.put(path, svg(60, 50))
	b.until("reading again", func() bool { return len(b.told) == 1 })
	if !b.toldOf("leaf.svg was changed and read again. Its size is 60 × 50 mm now") {
		t.Errorf("told %q", b.told)
	}
	// What was read again and saved is remembered as well.
	b.save()
	b.nextDay()
	b.open("tea.gusset")
	b.found()
	if !b.Watches("leaf.svg") || len(b.told) != 0 || len(b.alarms) != 0 {
		t.Errorf("origins %+v, told %q, alarms %v", b.origins, b.told, b.alarms)
	}
}

// Artwork that was changed while nobody looked is told of and left as it is; when it is
// saved once more it is read.
func TestArtworkThatChangedOvernight(t *testing.T) {
	b := newBench(t)
	drawing := svg(50, 50)
	path := b.saved(drawing)
	b.put(path, svg(55, 50))
	b.open("tea.gusset")
	b.found()
	if kept, _ := b.doc.File("leaf.svg"); !bytes.Equal(kept, drawing) || b.doc.State().Dirty {
		t.Error("opening a project changed it")
	}
	if len(b.told) != 1 || !strings.HasPrefix(b.told[0], "Changed on disk since the project took it: leaf.svg.") || !b.Watches("leaf.svg") {
		t.Fatalf("told %q, origins %+v", b.told, b.origins)
	}
	b.put(path, svg(60, 50))
	b.until("reading again", func() bool { return len(b.told) == 2 })
	if !b.toldOf("Its size is 60 × 50 mm now; it was 50 × 50 mm.") {
		t.Errorf("told %q", b.told)
	}
}

// A file that is gone is told of once, and read when it comes back.
func TestArtworkThatIsGone(t *testing.T) {
	b := newBench(t)
	drawing := svg(50, 50)
	path := b.saved(drawing)
	if err := os.RemoveAll(filepath.Dir(path)); err != nil {
		t.Fatal(err)
	}
	b.open("tea.gusset")
	b.found()
	if len(b.told) != 1 || b.told[0] != "Not on disk any more: "+path+". The project keeps it as it was read last." || b.Watches("leaf.svg") {
		t.Fatalf("told %q, origins %+v", b.told, b.origins)
	}
	b.nextDay()
	b.open("tea.gusset")
	if b.found(); len(b.told) != 0 || len(b.alarms) != 0 {
		t.Errorf("told %q, alarms %v", b.told, b.alarms)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	b.put(path, svg(70, 50))
	b.until("reading again", func() bool { return b.toldOf("Its size is 70 × 50 mm now") })
	if !b.Watches("leaf.svg") {
		t.Error("what came back is not followed")
	}
	b.put(path, drawing)
	b.until("reading again", func() bool { return b.toldOf("Its size is 50 × 50 mm now") })
	b.nextDay()
	b.open("tea.gusset")
	if b.found(); !b.Watches("leaf.svg") || len(b.told) != 0 {
		t.Errorf("origins %+v, told %q", b.origins, b.told)
	}
	if known, _ := b.set.Origin(sumOf(drawing)); known.Missed {
		t.Error("what is there again still counts as missed")
	}
}

// Both are told at once, since a notice takes the place of the last.
func TestChangedAndGoneAreToldTogether(t *testing.T) {
	b := newBench(t)
	first, second := b.write("leaf.svg", svg(50, 50)), b.write("tea.svg", svg(40, 40))
	b.Add("front", first, second)
	b.idle()
	b.save()
	b.nextDay()
	b.put(first, svg(51, 50))
	if err := os.Remove(second); err != nil {
		t.Fatal(err)
	}
	b.open("tea.gusset")
	b.found()
	if len(b.told) != 1 || !b.toldOf("took it: leaf.svg.") || !b.toldOf("any more: "+second+".") {
		t.Errorf("told %q", b.told)
	}
}

// Where a file was read from comes before a copy beside the project, and the copy before
// one that was changed since.
func TestCopyBesideTheProject(t *testing.T) {
	b := newBench(t)
	drawing := svg(50, 50)
	path := b.saved(drawing)
	beside := b.write("leaf.svg", drawing)
	b.open("tea.gusset")
	if b.found(); b.origins["leaf.svg"].path != path {
		t.Errorf("comes from %s", b.origins["leaf.svg"].path)
	}
	b.put(path, svg(50, 51))
	b.nextDay()
	b.open("tea.gusset")
	if b.found(); b.origins["leaf.svg"].path != beside || len(b.told) != 0 {
		t.Errorf("comes from %s, told %q", b.origins["leaf.svg"].path, b.told)
	}
}

// Work that was never saved is restored without a path; its artwork is followed too.
func TestRestoredWorkIsFollowed(t *testing.T) {
	b := newBench(t)
	path := b.write("leaf.svg", svg(50, 50))
	b.Add("front", path)
	b.idle()
	left := b.doc.Project()
	b.nextDay()
	b.doc.Restore(left)
	if b.found(); !b.Watches("leaf.svg") {
		t.Errorf("origins %+v", b.origins)
	}
}

// A project from another computer names nothing on this one: nothing is followed, and
// nothing is said.
func TestProjectFromElsewhere(t *testing.T) {
	b := newBench(t)
	b.set.AddOrigin(settings.Origin{Sum: sumOf(svg(1, 1)), Path: b.write("secret.svg", svg(50, 50))})
	if err := project.Save(filepath.Join(b.folder, "tea.gusset"), b.project(map[string][]byte{"leaf.svg": svg(50, 50)})); err != nil {
		t.Fatal(err)
	}
	b.open("tea.gusset")
	if names := b.found(); len(names) != 0 || len(b.told) != 0 || len(b.watched) != 0 {
		t.Errorf("origins %q, told %q, watched %v", names, b.told, b.watched)
	}
}

func TestCompare(t *testing.T) {
	folder := t.TempDir()
	content := bytes.Repeat([]byte("leaf "), 40_000) // more than is read at once
	put := func(name string, data []byte) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, data, 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	late := bytes.Clone(content)
	late[len(late)-1] = '!'
	for path, want := range map[string]likeness{
		put("same.svg", content): same, put("late.svg", late): other, put("short.svg", content[:9]): other,
		put("empty.svg", nil): other, folder: gone, filepath.Join(folder, "none.svg"): gone, filepath.Join(folder, "no", "folder.svg"): gone,
	} {
		for _, how := range []func(string, []byte) likeness{compare, compareBeside} {
			if got := how(path, content); got != want {
				t.Errorf("%s compares as %d, want %d", path, got, want)
			}
		}
	}
}
