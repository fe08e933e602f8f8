package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// Everything is written where there is no network: every kind of file, with artwork of
// every sort, the sandbox of PDF artwork and the proof for a browser among it.
func TestExportWithoutANetwork(t *testing.T) {
	program, _ := build(t)
	path := filepath.Join(t.TempDir(), "offline.gusset")
	if err := project.Save(path, withArtwork(t)); err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(t.TempDir(), "files")
	command := exec.Command(program, "export", "--to", folder, path)
	command.Env = append(os.Environ(), "XDG_CACHE_HOME="+t.TempDir())
	if !geomtest.TakeNetwork(t, command) {
		t.Skip("there is no way here to take the network from a program")
	}
	output, err := command.CombinedOutput()
	if err != nil && command.ProcessState.ExitCode() != 1 { // 1: there are findings
		t.Fatalf("gwbatch export: %v\n%s", err, output)
	}
	for _, kind := range export.Kinds() {
		for _, ending := range append(kind.Endings, kind.PieceEnding) {
			if ending != "" && !strings.Contains(string(output), "offline"+ending) && !strings.Contains(string(output), "offline-1"+ending) {
				t.Errorf("no file %q among\n%s", ending, output)
			}
		}
	}
}

// withArtwork returns a bag with an SVG file, a picture and a page of a PDF file on it.
func withArtwork(t *testing.T) project.Project {
	t.Helper()
	spec := bag.Default()
	spec.Family = []bag.Size{{Name: "small", Width: 180, Gusset: 80, Height: 240, Quantity: 500}}
	spec.Artwork = []bag.Artwork{
		bag.NewArtwork("page.pdf", "front"), bag.NewArtwork("picture.png", "back"), bag.NewArtwork("drawing.svg", "gusset-left"),
	}
	var picture bytes.Buffer
	if err := png.Encode(&picture, image.NewRGBA(image.Rect(0, 0, 20, 30))); err != nil {
		t.Fatal(err)
	}
	return project.Project{Spec: spec, Files: map[string][]byte{
		"page.pdf": drawnPage(t), "picture.png": picture.Bytes(),
		"drawing.svg": fmt.Appendf(nil, `<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"><path d="M0 0h9v9z"/></svg>`),
	}}
}

// drawnPage returns a PDF file, which is the drawing of a bag.
func drawnPage(t *testing.T) []byte {
	t.Helper()
	snapshot, err := document.Derive(bag.Default())
	if err != nil {
		t.Fatal(err)
	}
	kinds, err := export.Choose("dieline")
	if err != nil {
		t.Fatal(err)
	}
	job := export.Job{Folder: t.TempDir(), Project: "page", Snapshot: snapshot, Date: time.Unix(0, 0), Kinds: kinds}
	paths, err := export.Write(context.Background(), job, func(float64, string) {})
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(paths[0])
	if err != nil {
		t.Fatal(err)
	}
	return data
}
