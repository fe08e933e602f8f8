//go:build linux

package window

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"gussetwright/app/shortcuts"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// TestEndToEnd starts the real program under Xvfb, without a network, types a size, drags a slider and a
// panel edge, undoes, saves, opens again, writes the PDF and compares it with that of
// gwbatch for the saved file.
func TestEndToEnd(t *testing.T) {
	gussetwright, gwbatch := buildProgram(t, "gussetwright"), buildProgram(t, "gwbatch")
	s := newScreen(t)
	path := demoFile(t)
	s.start(gussetwright, path)
	s.makeTwin(path)

	s.click(s.entry("190"))
	s.expectStill("an entry has the focus")
	s.keys("ctrl+a")
	s.typed("2*120+10")
	s.keys("Return")
	s.waitForTitle("demo*")
	s.save()
	s.expect("width typed", path, func(b bag.Body) bool { return b.Width == 250 })

	s.twin.open(path)
	slider := s.slider(1) // that of the gusset depth
	s.drag(s.at(slider, 0.33, 0.5), s.at(slider, 0.6, 0.5))
	s.save()
	s.expect("slider dragged", path, func(b bag.Body) bool { return b.Gusset > 95 })
	s.keys("ctrl+z")
	s.save()
	s.expect("drag undone in one step", path, func(b bag.Body) bool { return b.Gusset == 95 && b.Width == 250 })

	s.twin.open(path)
	edge := s.onBlank(geometry.Vec2{X: 250, Y: 250})
	s.drag(edge, edge.AddXY(-20, 0))
	s.save()
	s.expect("panel edge dragged", path, func(b bag.Body) bool { return b.Width < 245 && b.Width > 150 })
	s.keys("ctrl+z")
	s.keys("ctrl+y")
	s.keys("ctrl+s")
	dragged := s.body(path)
	s.quit()

	s.start(gussetwright, path)
	s.twin.open(path)
	s.keys("ctrl+" + strconv.Itoa(shortcuts.Steps)) // the files are the last step
	s.twin.goToStep(shortcuts.Steps)
	s.settle()
	s.click(s.at(s.twin.files.Button(), 0.5, 0.5))
	pdf := filepath.Join(s.files(), "demo-dieline.pdf")
	s.waitFor("the PDF", func() bool { _, err := os.Stat(pdf); return err == nil })
	s.quit()
	if s.body(path) != dragged {
		t.Errorf("writing files changed the bag from %+v to %+v", dragged, s.body(path))
	}
	compareWithBatch(t, gwbatch, path, pdf)
}

// compareWithBatch writes the dieline of the saved project with gwbatch: it must be
// the same file, byte for byte.
func compareWithBatch(t *testing.T, gwbatch, path, pdf string) {
	t.Helper()
	folder := t.TempDir()
	if output, err := exec.Command(gwbatch, "export", "--only", "dieline", "--to", folder, path).CombinedOutput(); err != nil {
		t.Fatalf("gwbatch export: %v\n%s", err, output)
	}
	want, err := os.ReadFile(filepath.Join(folder, "demo-dieline.pdf"))
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(pdf)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("the window wrote %d bytes, gwbatch %d others", len(got), len(want))
	}
}
