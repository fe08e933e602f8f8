package faults

import (
	"bytes"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/project"
	"gussetwright/app/session"
	"gussetwright/app/wholefile"
	"gussetwright/geometry/geomtest"
)

var (
	kills = flag.Int("kills", 60, "how often the program is killed, over all kinds of writing")
	seed  = flag.Uint64("seed", 0, "of the moments at which it is killed; 0 for another each time")
)

// longest is how long a child works at most before it is killed.
const longest = 60 * time.Millisecond

// figures is what came of the kills of one kind.
type figures struct{ kills, during, edits, late int }

func (f figures) String() string {
	return fmt.Sprintf("%d kills, %d during a write; %d edits, most lost at once %d", f.kills, f.during, f.edits, f.late)
}

// victim is one kind of writing that is interrupted.
type victim struct {
	*testing.T
	random *rand.Rand
	folder string // holds the work folder and the recovery folder
	figures
}

// TestKilled: however a program ends, each name leads to a whole file, the old one or
// the new one, and at most the edit under way is lost.
func TestKilled(t *testing.T) {
	if *seed == 0 {
		*seed = uint64(time.Now().UnixNano())
	}
	t.Logf("-seed %d", *seed)
	left := *kills
	for i, test := range []struct {
		name string
		kill func(v *victim)
		part int // one of so many of the kills that are left
	}{
		{"save", func(v *victim) { v.killSaving("save", "bag.gusset") }, 4},
		{"bare", func(v *victim) { v.killSaving("bare", "bag.json") }, 4},
		{"autosave", (*victim).killAutosaving, 2},
		{"export", exportKiller(t), 1},
	} {
		t.Run(test.name, func(t *testing.T) {
			v := &victim{T: t, random: rand.New(rand.NewPCG(*seed, uint64(i))), folder: t.TempDir()}
			share := left / test.part
			left -= share
			for range share {
				test.kill(v)
				v.kills++
				if t.Failed() {
					break
				}
			}
			t.Log(v.figures)
		})
	}
}

func (v *victim) work(name string) string { return filepath.Join(v.folder, workFolder, name) }

// kill runs a child until a random moment, or in every second case, until a file is
// being written after that.
func (v *victim) kill(work, folder string) (reported int) {
	v.Helper()
	delay, aimed := time.Duration(v.random.Int64N(int64(longest))), v.random.IntN(2) == 0
	reported = run(v.T, work, v.folder, func() {
		time.Sleep(delay)
		for end := time.Now().Add(time.Second); aimed && len(unfinished(folder)) == 0 && time.Now().Before(end); {
		}
	})
	if len(unfinished(folder)) > 0 {
		v.during++
	}
	v.edits += reported
	return reported
}

// killSaving interrupts saving. Nothing but the file and its artwork has a name, the
// file opens, and file and copy together hold the last edit that was reported.
func (v *victim) killSaving(work, name string) {
	v.Helper()
	folder, path := filepath.Join(v.folder, workFolder), v.work(name)
	v.begin(path)
	reported := v.kill(work, folder)
	v.wantNames(folder, name)
	saved, err := project.Open(path)
	if err != nil || len(saved.Notes) != 0 || !bytes.Equal(saved.Files[artworkName], artworkOf(0)) {
		v.Fatalf("the file after a kill: notes %q, %v", saved.Notes, err)
	}
	doc := document.New()
	s := session.New(doc, session.Options{Recovery: filepath.Join(v.folder, recoveryFolder)})
	v.check(s.Open(path))
	newest := editOf(saved.Spec.Body.Width)
	for _, left := range v.recoverable(s) {
		v.check(s.Restore(left))
		newest = max(newest, editOf(doc.State().Spec.Body.Width))
		v.check(0, s.Close())
	}
	v.wantEdit(newest, reported)
	v.saveAgain(path)
	v.wantNames(filepath.Join(v.folder, recoveryFolder))
}

// killAutosaving interrupts the writing of copies with artwork that changes.
func (v *victim) killAutosaving() {
	v.Helper()
	recovery := filepath.Join(v.folder, recoveryFolder)
	reported := v.kill("autosave", recovery)
	doc := document.New()
	s := session.New(doc, session.Options{Recovery: recovery})
	left := v.recoverable(s)
	if len(left) != 1 {
		v.Fatalf("%d copies, want one", len(left))
	}
	notes, err := s.Restore(left[0])
	if err != nil || len(notes) != 0 {
		v.Fatalf("restore: notes %q, %v", notes, err)
	}
	restored := doc.Project()
	edit := editOf(restored.Spec.Body.Width)
	v.wantEdit(edit, reported)
	if !bytes.Equal(restored.Files[artworkName], artworkOf(edit)) {
		v.Errorf("the artwork is not that of edit %d", edit)
	}
	v.check(0, s.Close())
	v.wantNames(recovery)
}

// exportKiller returns what interrupts an export: every file is that of one of the two
// bags to the last byte.
func exportKiller(t *testing.T) func(v *victim) {
	even, odd := filesOf(t, 0), filesOf(t, 1)
	return func(v *victim) {
		folder := filepath.Join(v.folder, workFolder)
		v.kill("export", folder)
		entries, err := os.ReadDir(folder)
		v.check(entries, err)
		for _, entry := range entries {
			data, err := os.ReadFile(v.work(entry.Name()))
			v.check(data, err)
			name := entry.Name()
			if known := bytes.Equal(data, even[name]) || bytes.Equal(data, odd[name]); !known && !wholefile.IsUnfinished(name) {
				v.Errorf("%s holds %d bytes that no export wrote", name, len(data))
			}
		}
		v.check(export.Write(v.Context(), orderOf(0, folder), func(float64, string) {}))
		v.wantLeftovers(folder, 0)
	}
}

// TestExportedFilesAreWhole: what the files are compared with after a kill is whole in
// the eyes of another program, qpdf.
func TestExportedFilesAreWhole(t *testing.T) {
	checked := 0
	for name, data := range filesOf(t, 0) {
		if filepath.Ext(name) != ".pdf" {
			continue
		}
		path := filepath.Join(t.TempDir(), name)
		if err := os.WriteFile(path, data, 0o644); err != nil {
			t.Fatal(err)
		}
		geomtest.Run(t, "qpdf", "--check", path)
		checked++
	}
	if checked == 0 {
		t.Error("no PDF is among the exported files")
	}
}

// begin puts the bag before the first edit at path, where nothing is yet.
func (v *victim) begin(path string) {
	v.Helper()
	v.check(0, os.MkdirAll(filepath.Dir(path), 0o755))
	doc := document.New()
	doc.Restore(bagOf(0))
	s := session.New(doc, session.Options{Recovery: filepath.Join(v.folder, recoveryFolder)})
	v.check(0, s.SaveAs(path))
	v.check(0, s.Close())
}

// saveAgain saves as the next program does, which clears away what was left.
func (v *victim) saveAgain(path string) {
	v.Helper()
	doc := document.New()
	s := session.New(doc, session.Options{Recovery: filepath.Join(v.folder, recoveryFolder)})
	v.check(s.Open(path))
	spec := doc.State().Spec
	spec.Body.Height++
	doc.Set(spec)
	v.check(0, s.Save())
	v.check(0, s.Close())
	v.wantLeftovers(filepath.Dir(path), 0)
}

func (v *victim) recoverable(s *session.Session) []session.Recovery {
	v.Helper()
	left, err := s.Recoverable()
	v.check(left, err)
	return left
}

// wantEdit expects an edit that was reported, or the one under way.
func (v *victim) wantEdit(got, reported int) {
	v.Helper()
	v.late = max(v.late, reported+1-got)
	if got != reported && got != reported+1 {
		v.Errorf("edit %d is there, reported was %d", got, reported)
	}
}

// wantNames expects nothing in a folder but these files, their artwork, and at most one
// that was being written.
func (v *victim) wantNames(folder string, names ...string) {
	v.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		v.Fatal(err)
	}
	for _, entry := range entries {
		name := entry.Name()
		if !slices.Contains(names, name) && name != artworkName && !wholefile.IsUnfinished(name) {
			v.Errorf("%s is left in %s", name, folder)
		}
	}
	v.wantLeftovers(folder, 1)
}

func (v *victim) wantLeftovers(folder string, most int) {
	v.Helper()
	if left := unfinished(folder); len(left) > most {
		v.Errorf("unfinished files %q, want %d at most", left, most)
	}
}

// unfinished returns the files that were being written, in the folder or in one of its
// own.
func unfinished(folder string) (paths []string) {
	for _, pattern := range []string{"*", filepath.Join("*", "*")} {
		found, _ := filepath.Glob(filepath.Join(folder, pattern))
		for _, path := range found {
			if wholefile.IsUnfinished(filepath.Base(path)) {
				paths = append(paths, path)
			}
		}
	}
	return paths
}

func (v *victim) check(_ any, err error) {
	v.Helper()
	if err != nil {
		v.Fatal(err)
	}
}
