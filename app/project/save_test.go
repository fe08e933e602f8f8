package project

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
)

// names returns the names in a folder, hidden ones too.
func names(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, entry := range entries {
		all = append(all, entry.Name())
	}
	return all
}

func TestSaveAndOpen(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "demo.gusset")
	want := sample()
	if err := Save(path, want); err != nil {
		t.Fatal(err)
	}
	first, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	got, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got\n%+v, want\n%+v", got, want)
	}
	if err := Save(path, got); err != nil {
		t.Fatal(err)
	}
	second, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first, second) {
		t.Error("saving twice gives other bytes")
	}
	if got := names(t, folder); !slices.Equal(got, []string{"demo.gusset"}) {
		t.Errorf("the folder holds %q", got)
	}
}

func TestSaveLeavesOutArtworkThatIsNotPlaced(t *testing.T) {
	path := filepath.Join(t.TempDir(), "demo.gusset")
	p := sample()
	p.Files["taken out.pdf"] = []byte("secret")
	if err := Save(path, p); err != nil {
		t.Fatal(err)
	}
	got, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if _, kept := got.Files["taken out.pdf"]; kept || len(got.Files) != 2 {
		t.Errorf("files %q", got.Files)
	}
}

func TestSaveFailing(t *testing.T) {
	const before = "what was there before"
	invalid := sample()
	invalid.Spec.Body.Width = 5
	for _, test := range []struct {
		name  string
		p     Project
		path  func(t *testing.T, folder string) string
		parts []string
	}{
		{"folder missing", sample(), func(t *testing.T, folder string) string {
			return filepath.Join(folder, "nowhere", "demo.gusset")
		}, []string{"nowhere"}},
		{"folder in the place of the file", sample(), func(t *testing.T, folder string) string {
			path := filepath.Join(folder, "demo.gusset")
			if err := os.Mkdir(path, 0o755); err != nil {
				t.Fatal(err)
			}
			return path
		}, []string{"this is a folder", "choose a file name in it"}},
		{"file in the place of the folder", sample(), func(t *testing.T, folder string) string {
			return filepath.Join(folder, "before", "demo.gusset")
		}, []string{"before"}},
		{"write-protected file", sample(), func(t *testing.T, folder string) string {
			path := filepath.Join(folder, "before")
			if err := os.Chmod(path, 0o444); err != nil {
				t.Fatal(err)
			}
			return path
		}, []string{"write-protected", "choose another name"}},
		{"read-only folder", sample(), func(t *testing.T, folder string) string {
			if os.Geteuid() == 0 || runtime.GOOS == "windows" {
				t.Skip("nothing stops this user from writing there")
			}
			if err := os.Chmod(folder, 0o555); err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() { os.Chmod(folder, 0o755) })
			return filepath.Join(folder, "before")
		}, []string{"permission denied"}},
		{"socket in the place of the file", sample(), func(t *testing.T, folder string) string {
			path := filepath.Join(folder, "s")
			listener, err := net.Listen("unix", path)
			if err != nil {
				t.Skip("no sockets here:", err)
			}
			t.Cleanup(func() { listener.Close() })
			return path
		}, []string{"not a plain file", "choose another name"}},
		{"invalid spec", invalid, func(t *testing.T, folder string) string {
			return filepath.Join(folder, "before")
		}, []string{"bag.width_mm", "30 to 1000 mm"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			folder := t.TempDir()
			kept := filepath.Join(folder, "before")
			writeFile(t, kept, []byte(before))
			path := test.path(t, folder)
			there := names(t, folder)
			wantMessage(t, Save(path, test.p), append(test.parts, "save project "+path)...)
			if got := names(t, folder); !slices.Equal(got, there) {
				t.Errorf("the folder holds %q, before it held %q", got, there)
			}
			if got, err := os.ReadFile(kept); err != nil || string(got) != before {
				t.Errorf("the file that was there holds %q, %v", got, err)
			}
		})
	}
}

func TestReplaceKeepsPermissionsAndLinks(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("permissions and links differ here")
	}
	folder := t.TempDir()
	path, link, fresh := filepath.Join(folder, "demo.gusset"), filepath.Join(folder, "link.gusset"), filepath.Join(folder, "fresh")
	writeFile(t, path, nil)
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("demo.gusset", link); err != nil {
		t.Fatal(err)
	}
	if err := Save(link, sample()); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link became %v, %v", info.Mode(), err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 || info.Size() == 0 {
		t.Errorf("the file has the mode %v and %d bytes, %v", info.Mode(), info.Size(), err)
	}
	writeFile(t, fresh, nil)
	usual, err := os.Stat(fresh)
	if err != nil {
		t.Fatal(err)
	}
	if err := Save(fresh+".gusset", sample()); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(fresh + ".gusset"); err != nil || info.Mode()&0o044 != usual.Mode()&0o044 {
		t.Errorf("a new file has the mode %v, %v; others get %v", info.Mode(), err, usual.Mode())
	}
}

func TestWriteRefusesWhatReadWould(t *testing.T) {
	p := sample()
	within := func(change func(*limits)) limits {
		small := standard()
		change(&small)
		return small
	}
	for _, test := range []struct {
		within limits
		part   string
	}{
		{within(func(l *limits) { l.file = 10 }), `artwork "back.svg" has 11 bytes`},
		{within(func(l *limits) { l.document = 100 }), "bag.json has"},
		{within(func(l *limits) { l.total = 1500 }), "the project has"},
	} {
		wantMessage(t, write(io.Discard, p, test.within), test.part, "more than the most")
	}
	p.Preview = make([]byte, 50)
	p.Files = nil
	wantMessage(t, write(io.Discard, p, within(func(l *limits) { l.file = 20 })), "the preview has 50 bytes")
	wantMessage(t, write(failingWriter{}, sample(), standard()), errBroken.Error())
}

func TestOpenBareDocument(t *testing.T) {
	folder := t.TempDir()
	inner := filepath.Join(folder, "inner")
	if err := os.Mkdir(inner, 0o755); err != nil {
		t.Fatal(err)
	}
	writeFile(t, filepath.Join(folder, "secret.pdf"), []byte("secret"))
	writeFile(t, filepath.Join(inner, "front.pdf"), []byte("%PDF"))
	path := filepath.Join(inner, "named like a project.gusset")
	writeFile(t, path, []byte(`{"artwork": [{"file": "front.pdf", "on": "front"}, {"file": "link.pdf", "on": "back"}, {"file": "gone.pdf", "on": "back"}],
		"profile": "gone.icc"}`))
	if err := os.Symlink("../secret.pdf", filepath.Join(inner, "link.pdf")); err != nil {
		t.Skip("no links here:", err)
	}
	p, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Files) != 1 || string(p.Files["front.pdf"]) != "%PDF" {
		t.Errorf("files %q, want front.pdf alone", p.Files)
	}
	notes := notesOf(p)
	for _, name := range []string{`artwork "link.pdf"`, `artwork "gone.pdf"`, `output profile "gone.icc"`} {
		if len(p.Notes) != 3 || !strings.Contains(notes, name) {
			t.Errorf("notes %q, want three, one of them about %s", p.Notes, name)
		}
	}
}

func TestOpenFailing(t *testing.T) {
	folder := t.TempDir()
	empty := filepath.Join(folder, "empty.gusset")
	writeFile(t, empty, nil)
	_, err := Open(empty)
	wantMessage(t, err, "open project "+empty, "the file is empty")
	_, err = Open(os.DevNull) // not a plain file, so it is read to its end
	wantMessage(t, err, "the file is empty")
	_, err = Open(folder)
	wantMessage(t, err, "open project "+folder, "this is a folder")
	_, err = Open(filepath.Join(folder, "gone.gusset"))
	wantMessage(t, err, "open project", "gone.gusset")
	if !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%v does not wrap fs.ErrNotExist", err)
	}
}

func TestOpenDefaultDocument(t *testing.T) {
	path := filepath.Join(t.TempDir(), documentName)
	writeFile(t, path, []byte("{}"))
	p, err := Open(path)
	if err != nil || !reflect.DeepEqual(p.Spec, bag.Default()) || len(p.Notes) > 0 {
		t.Errorf("got %+v, %v", p, err)
	}
}
