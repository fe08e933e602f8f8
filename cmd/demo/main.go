// Command demo draws the artwork of the demo project and saves the project anew: the
// gift bag of a tea house that does not exist.
//
//	go run ./cmd/demo
package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

const target = "assets/demo/tea-house.gusset"

func main() {
	if err := renew(target); err != nil {
		fmt.Fprintln(os.Stderr, "demo:", err)
		os.Exit(1)
	}
	fmt.Println("saved", target)
}

func renew(path string) error {
	spec := teaHouse()
	front, err := drawFront(spec.Body.Width, spec.Body.Height, spec.Print.Bleed)
	if err != nil {
		return err
	}
	leaves, err := drawLeaves(spec.Body.Gusset / 2)
	if err != nil {
		return err
	}
	p := project.Project{Spec: spec, Files: map[string][]byte{"moor.svg": front, "leaves.png": leaves}}
	snapshot, err := document.DeriveWithArt(context.Background(), spec, p.Files)
	if err != nil {
		return err
	}
	if err := snapshot.ArtError(); err != nil {
		return err
	}
	if p.Preview, err = export.Preview(snapshot); err != nil {
		return err
	}
	return project.Save(path, p)
}

// teaHouse returns the bag of the demo.
func teaHouse() bag.Spec {
	spec := bag.OfSize(190, 95, 265)
	spec.Name = "Quillmoor Tea House, gift bag"
	spec.Date = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
	spec.Paper.Kind = bag.PaperMatt
	spec.Sheet.Width, spec.Sheet.Height = 900, 640
	spec.Run.Quantity = 1500
	spec.Print.Background = bag.Background{Cyan: 22, Magenta: 4, Yellow: 26}
	front := bag.NewArtwork("moor.svg", bag.OnFaces)
	leaves := bag.NewArtwork("leaves.png", bag.OnGussets)
	leaves.Fit, leaves.Repeat = bag.FitExact, bag.RepeatGrid
	spec.Artwork = []bag.Artwork{leaves, front}
	return spec
}

// text joins lines that are written with a format.
type text struct{ bytes.Buffer }

func (t *text) line(format string, args ...any) { fmt.Fprintf(&t.Buffer, format+"\n", args...) }
