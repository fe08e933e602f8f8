package main

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"fmt"
	"image"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"gussetwright/geometry/geomtest"
)

var (
	christmas = time.Date(2026, time.December, 24, 0, 0, 0, 0, time.UTC)
	members   = []member{
		{"bin/program", runnable, []byte("\x7fELF and so on")},
		{"README.txt", readable, []byte("Read me.\n")},
		{"licences/" + strings.Repeat("deep/", 20) + "LICENSE", readable, []byte("Free.\n")},
	}
)

// listTar returns the names in a compressed tar archive with their rights.
func listTar(t *testing.T, path string) map[string]fs.FileMode {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	unpacked, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]fs.FileMode{}
	for archive := tar.NewReader(unpacked); ; {
		head, err := archive.Next()
		if err == io.EOF {
			return found
		}
		if err != nil {
			t.Fatal(err)
		}
		if head.Uid != 0 || head.Gid != 0 {
			t.Errorf("%s belongs to %d:%d", head.Name, head.Uid, head.Gid)
		}
		found[head.Name] = fs.FileMode(head.Mode)
	}
}

func TestArchivesAreTheSameInAnyOrder(t *testing.T) {
	turned := slices.Clone(members)
	slices.Reverse(turned)
	for name, write := range map[string]func(io.Writer, string, []member, time.Time) error{"tar": writeTar, "zip": writeZip} {
		var first, second, later bytes.Buffer
		for _, one := range []struct {
			to      *bytes.Buffer
			members []member
			date    time.Time
		}{{&first, members, christmas}, {&second, turned, christmas}, {&later, members, christmas.AddDate(0, 0, 1)}} {
			if err := write(one.to, "top", one.members, one.date); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
		}
		if !bytes.Equal(first.Bytes(), second.Bytes()) {
			t.Errorf("%s: the order of the members changes the archive", name)
		}
		if bytes.Equal(first.Bytes(), later.Bytes()) {
			t.Errorf("%s: the day of the release is not in the archive", name)
		}
		if err := write(io.Discard, "top", append(turned, members[0]), christmas); err == nil {
			t.Errorf("%s: a file may be there twice", name)
		}
	}
}

// The archives are read by GNU tar and Info-ZIP's unzip.
func TestArchivesAreReadByOthers(t *testing.T) {
	folder := t.TempDir()
	tarred, zipped := filepath.Join(folder, "a.tar.gz"), filepath.Join(folder, "a.zip")
	for _, path := range []string{tarred, zipped} {
		if err := saveArchive(path, "top", members, christmas); err != nil {
			t.Fatal(err)
		}
	}
	list := string(geomtest.Run(t, "tar", "--utc", "--numeric-owner", "-tvzf", tarred))
	for _, line := range []string{"-rwxr-xr-x 0/0", "2026-12-24 00:00 top/bin/program", "-rw-r--r-- 0/0", "top/README.txt"} {
		if !strings.Contains(list, line) {
			t.Errorf("tar lists\n%swant %q in it", list, line)
		}
	}
	out := filepath.Join(folder, "out")
	geomtest.Run(t, "unzip", "-q", zipped, "-d", out)
	for _, one := range members {
		path := filepath.Join(out, "top", filepath.FromSlash(one.name))
		got, err := os.ReadFile(path)
		if err != nil || !bytes.Equal(got, one.content) {
			t.Errorf("unzip: %s holds %q (%v)", one.name, got, err)
		}
		if info, err := os.Stat(path); err != nil || info.Mode() != one.mode {
			t.Errorf("unzip: %s has the rights %v (%v), want %v", one.name, info.Mode(), err, one.mode)
		}
	}
}

// ImageMagick reads the icon of Windows and finds every size in it.
func TestWindowsIconIsReadByOthers(t *testing.T) {
	icon, err := readIcon(&machine{root: geomtest.Root(t)})
	if err != nil {
		t.Fatal(err)
	}
	data, err := windowsIcon(icon)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "icon.ico")
	writeFile(t, path, string(data))
	got := strings.Fields(string(geomtest.Run(t, "identify", "-format", "%wx%h\n", path)))
	var want []string
	for _, size := range windowsIconSizes {
		want = append(want, fmt.Sprintf("%dx%d", size, size))
	}
	if !slices.Equal(got, want) {
		t.Errorf("identify finds %v, want %v", got, want)
	}
}

func TestScaledIconKeepsItsColours(t *testing.T) {
	icon, err := readIcon(&machine{root: geomtest.Root(t)})
	if err != nil {
		t.Fatal(err)
	}
	data, err := scaledIcon(icon, 64)
	if err != nil {
		t.Fatal(err)
	}
	small, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	for _, point := range []image.Point{{10, 50}, {32, 50}, {40, 40}, {55, 10}} {
		r, g, b, _ := small.At(point.X, point.Y).RGBA()
		want, green, blue, _ := icon.At(point.X*8+4, point.Y*8+4).RGBA()
		const near = 0x1000
		if max(r, want)-min(r, want) > near || max(g, green)-min(g, green) > near || max(b, blue)-min(b, blue) > near {
			t.Errorf("at %v the small icon has another colour", point)
		}
	}
}

func TestPictureOfAnEmptyWindow(t *testing.T) {
	if empty := colours(image.NewGray(image.Rect(0, 0, 90, 60))); empty >= fewestColours {
		t.Errorf("an empty picture counts %d colours", empty)
	}
	full := image.NewNRGBA(image.Rect(0, 0, 90, 60))
	for i := range full.Pix {
		full.Pix[i] = byte(i * i / 7)
	}
	if found := colours(full); found < fewestColours {
		t.Errorf("a picture of many colours counts %d", found)
	}
}
