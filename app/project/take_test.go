package project

import (
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
)

func TestTake(t *testing.T) {
	path := filepath.Join(t.TempDir(), "front: first.svg")
	if err := os.WriteFile(path, []byte("<svg/>"), 0o644); err != nil {
		t.Skip("this system has no such names:", err)
	}
	name, data, err := Take(path, math.MaxInt64)
	if name != "front- first.svg" || string(data) != "<svg/>" || err != nil {
		t.Errorf("%q, %q, %v", name, data, err)
	}
}

func TestTakeRefuses(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "front.svg")
	if err := os.WriteFile(path, make([]byte, 3000), 0o644); err != nil {
		t.Fatal(err)
	}
	small := standard()
	small.file, small.total = 2000, 4000
	for _, test := range []struct {
		name, path string
		room       int64
		within     limits
		want       string
	}{
		{"missing", filepath.Join(folder, "gone.svg"), 1 << 20, standard(), ""},
		{"folder", folder, 1 << 20, standard(), "choose a file in it"},
		{"no room", path, 1000, standard(), "2.93 KiB, more than the 1000 bytes that the project has left of 256 MiB; make it smaller"},
		{"too large", path, 1 << 20, small, "1.953 KiB; choose a smaller one"},
		{"too large, and no room", path, 10, small, "1.953 KiB; choose a smaller one"},
	} {
		t.Run(test.name, func(t *testing.T) {
			data, err := takeWithin(test.path, test.room, test.within)
			if err == nil || data != nil || !strings.Contains(err.Error(), test.want) {
				t.Errorf("%d bytes, %v", len(data), err)
			}
		})
	}
	if _, _, err := Take(filepath.Join(folder, "gone.svg"), 1); !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), "gone.svg") {
		t.Errorf("missing file: %v", err)
	}
}

// Whatever a file is called, it gets a name that a project can hold.
func TestPlainName(t *testing.T) {
	long := strings.Repeat("ü", 200)
	for name, want := range map[string]string{
		"front.svg": "front.svg", "a:b.png": "a-b.png", `c\d.png`: "c-d.png", "tab\there.pdf": "tab-here.pdf",
		"..": "file", "bad\xff.png": "bad-.png", "": "file",
	} {
		if got := plainName(name); got != want {
			t.Errorf("%q becomes %q, want %q", name, got, want)
		}
	}
	for _, name := range []string{long + ".tiff", long, "a." + long, "..", "x."} {
		got := plainName(name)
		if why := refuseFileName(got); !why.Empty() || len(got) > longestEntryName {
			t.Errorf("%q becomes %q, which is refused: %s", name, got, why)
		}
	}
	if got := plainName(long + ".tiff"); !strings.HasSuffix(got, "ü.tiff") {
		t.Errorf("the ending is lost: %q", got)
	}
}

func TestRoom(t *testing.T) {
	p := Project{Spec: bag.Default(), Files: map[string][]byte{"front.svg": make([]byte, 5000), "unused.svg": make([]byte, 9000)}}
	empty := p.Room()
	if empty < 200<<20 || empty > 256<<20 {
		t.Errorf("room for %d bytes", empty)
	}
	p.Spec.Artwork = []bag.Artwork{bag.NewArtwork("front.svg", "front"), bag.NewArtwork("front.svg", "back")}
	if got := p.Room(); got != empty-5000 {
		t.Errorf("room for %d bytes, want %d", got, empty-5000)
	}
}
