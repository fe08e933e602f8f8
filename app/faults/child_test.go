package faults

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/jobs"
	"gussetwright/app/project"
	"gussetwright/app/session"
	"gussetwright/geometry/bag"
)

// childEnv tells the test program that it is the one to be killed: what it is to do,
// and where.
const (
	childEnv  = "GUSSETWRIGHT_TEST_CHILD"
	folderEnv = "GUSSETWRIGHT_TEST_FOLDER"
)

func TestMain(m *testing.M) {
	if work, found := works()[os.Getenv(childEnv)]; found {
		work(os.Getenv(folderEnv))
		os.Exit(1) // it never ends by itself
	}
	os.Exit(m.Run())
}

// works is what a child can do until it is killed. Each says after every edit that is
// safe on the disk which one it was.
func works() map[string]func(folder string) {
	return map[string]func(string){
		"save":     func(folder string) { saveOn(folder, "bag.gusset") },
		"bare":     func(folder string) { saveOn(folder, "bag.json") },
		"autosave": autosaveOn,
		"export":   exportOn,
	}
}

// The folders of a child, in the one it is given.
const (
	workFolder     = "work"
	recoveryFolder = "recovery"
	artworkName    = "front.pdf"
)

// saveOn edits, keeps a copy and saves, on and on.
func saveOn(folder, name string) {
	doc := document.New()
	s := session.New(doc, session.Options{Recovery: filepath.Join(folder, recoveryFolder)})
	check(s.Open(filepath.Join(folder, workFolder, name)))
	for edit := 1; ; edit++ {
		spec := doc.State().Spec
		spec.Body.Width = widthOf(edit)
		doc.Set(spec)
		must(s.Autosave())
		fmt.Println(edit)
		must(s.Save())
		fmt.Println(edit)
	}
}

// autosaveOn edits, replaces the artwork and keeps copies, on and on.
func autosaveOn(folder string) {
	doc := document.New()
	s := session.New(doc, session.Options{Recovery: filepath.Join(folder, recoveryFolder)})
	for edit := 1; ; edit++ {
		doc.Restore(bagOf(edit))
		must(s.Autosave())
		fmt.Println(edit)
	}
}

// exportOn writes the files of two bags by turns, on and on.
func exportOn(folder string) {
	runner := jobs.New(export.Write)
	for edit := 1; ; edit++ {
		must(runner.Start(orderOf(edit, filepath.Join(folder, workFolder)), func(float64, string) {}, func(r jobs.Result) { must(r.Err) }))
		runner.Wait()
		fmt.Println(edit)
	}
}

// widthOf tells the edits apart, in mm.
func widthOf(edit int) float64 { return 100 + float64(edit)/100 }

func editOf(width float64) int { return int(width*100 - 100*100 + 0.5) }

// artworkOf is the artwork of an edit: large enough for its writing to take time.
func artworkOf(edit int) []byte {
	return []byte("%PDF " + strings.Repeat(strconv.Itoa(edit)+" ", 100_000))
}

func bagOf(edit int) project.Project {
	spec := bag.Default()
	spec.Body.Width = widthOf(edit)
	spec.Artwork = []bag.Artwork{bag.NewArtwork(artworkName, "front")}
	return project.Project{Spec: spec, Files: map[string][]byte{artworkName: artworkOf(edit)}}
}

// orderOf is the order for files of an edit; every second is the same.
func orderOf(edit int, folder string) export.Job {
	spec := bag.Default()
	spec.Body.Width = widthOf(edit % 2)
	snapshot, err := document.Derive(spec)
	must(err)
	kinds, err := export.Choose("dieline,template,svg,dxf,fold")
	must(err)
	return export.Job{
		Folder: folder, Project: "bag", Snapshot: snapshot, Kinds: kinds,
		Date: time.Date(2026, time.March, 31, 0, 0, 0, 0, time.UTC),
	}
}

// filesOf returns the files of an edit as they must be, by name.
func filesOf(t *testing.T, edit int) map[string][]byte {
	t.Helper()
	paths, err := export.Write(context.Background(), orderOf(edit, t.TempDir()), func(float64, string) {})
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		files[filepath.Base(path)] = data
	}
	return files
}

func must(err error) {
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}

func check(_ any, err error) { must(err) }

// run starts a child, has when called once the first edit is safe, and kills the child
// when that returns. It returns the last edit that was reported.
func run(t *testing.T, work, folder string, when func()) (reported int) {
	t.Helper()
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), childEnv+"="+work, folderEnv+"="+folder)
	output, err := child.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := child.Start(); err != nil {
		t.Fatal(err)
	}
	for lines := bufio.NewScanner(output); lines.Scan(); {
		edit, err := strconv.Atoi(lines.Text())
		if err != nil {
			t.Errorf("the program to be killed says %q", lines.Text())
			continue
		}
		if reported == 0 {
			go func() {
				when()
				child.Process.Kill()
			}()
		}
		reported = edit
	}
	if child.Wait(); child.ProcessState.Exited() {
		t.Error("the program ended before it was killed")
	}
	return reported
}
