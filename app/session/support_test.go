package session

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
)

var _ Recent = (*settings.Settings)(nil)

const today, earlier = "2026-11-25", "2026-03-31"

// recent remembers paths as the settings do.
type recent []string

func (r *recent) AddRecent(path string) {
	r.ForgetRecent(path)
	*r = append([]string{path}, *r...)
}

func (r *recent) ForgetRecent(path string) {
	*r = slices.DeleteFunc(*r, func(p string) bool { return p == path })
}

// bench is a session with all that it is given.
type bench struct {
	*Session
	doc      *document.Document
	recent   recent
	recovery string
}

func start(t testing.TB, recovery string) *bench {
	t.Helper()
	b := &bench{doc: document.New(), recovery: recovery}
	b.Session = New(b.doc, Options{
		Recent: &b.recent, Recovery: recovery,
		Now: func() time.Time {
			day, err := time.Parse(time.DateOnly, today)
			if err != nil {
				t.Error(err)
			}
			return day
		},
	})
	t.Cleanup(func() {
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	})
	return b
}

func (b *bench) setWidth(mm float64) {
	spec := b.doc.Project().Spec
	spec.Body.Width = mm
	b.doc.Set(spec)
}

func (b *bench) width() float64 { return b.doc.Project().Spec.Body.Width }

// crash ends the session as a crash of the program does: nothing is tidied up and
// the system lets go of what was held.
func (b *bench) crash() {
	b.stop()
	b.copies.leave()
}

// must returns a function that fails the test with what was being done.
func must(t testing.TB) func(err error) {
	return func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
}

func open(t testing.TB, b *bench, path string) {
	t.Helper()
	if _, err := b.Open(path); err != nil {
		t.Fatal(err)
	}
}

func wantMessage(t *testing.T, err error, parts ...string) {
	t.Helper()
	for _, part := range parts {
		if err == nil || !strings.Contains(err.Error(), part) {
			t.Errorf("error %v, want one with %q", err, part)
		}
	}
}

func write(t testing.TB, path, text string) string {
	t.Helper()
	must(t)(os.WriteFile(path, []byte(text), 0o644))
	return path
}

func contents(t testing.TB, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	must(t)(err)
	return string(data)
}

func names(t testing.TB, folder string) (all []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	for _, entry := range entries {
		all = append(all, entry.Name())
	}
	return all
}

// demo puts the demo project into a folder.
func demo(t testing.TB, folder string) string {
	t.Helper()
	return write(t, filepath.Join(folder, assets.DemoName), string(assets.Demo))
}

// newer puts a project of a newer version into a folder.
func newer(t testing.TB, folder string) string {
	t.Helper()
	return write(t, filepath.Join(folder, "newer.json"), `{"format": "gussetwright/2", "bag": {"width_mm": 300}}`)
}

// withArtwork puts a project with artwork into a folder.
func withArtwork(t testing.TB, folder string) string {
	t.Helper()
	spec := bag.Default()
	spec.Date = earlier
	spec.Artwork = []bag.Artwork{bag.NewArtwork("front.pdf", "front")}
	path := filepath.Join(folder, "printed.gusset")
	must(t)(project.Save(path, project.Project{Spec: spec, Files: map[string][]byte{"front.pdf": []byte("%PDF front")}}))
	return path
}

// protect takes the right to write into a folder away until the test ends.
func protect(t *testing.T, folder string) {
	t.Helper()
	if os.Geteuid() == 0 || runtime.GOOS == "windows" {
		t.Skip("nothing stops this user from writing there")
	}
	must(t)(os.Chmod(folder, 0o555))
	t.Cleanup(func() { os.Chmod(folder, 0o755) })
}

func recoverable(t testing.TB, b *bench, want int) []Recovery {
	t.Helper()
	found, err := b.Recoverable()
	must(t)(err)
	if len(found) != want {
		t.Fatalf("%d copies to recover, want %d: %s", len(found), want, fmt.Sprint(found))
	}
	return found
}
