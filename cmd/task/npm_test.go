package main

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

func TestNpmPackagesAreInstalledWhenTheyMust(t *testing.T) {
	p := pretend(t, "linux", true, allPrograms()...)
	folder := npmFolder(p.machine)
	steps := []struct {
		name   string
		change func()
		want   int // installations
	}{
		{"first run", func() {}, 1},
		{"nothing changed", func() {}, 0},
		{"the list changed", func() {
			writeFile(t, p.path("testdata", "outside", "package.json"), `{"dependencies":{"fold":"0.12.0"}}`)
		}, 1},
		{"the lock changed", func() {
			writeFile(t, p.path("testdata", "outside", "package-lock.json"), `{"packages":{"node_modules/fold":{}}}`)
		}, 1},
		{"the packages were deleted", func() { os.RemoveAll(filepath.Join(folder, "node_modules")) }, 1},
		{"npm fails half way", func() {
			os.RemoveAll(filepath.Join(folder, "node_modules"))
			writeFile(t, filepath.Join(folder, "node_modules", "half"), "")
			os.Remove(filepath.Join(folder, installedName))
			p.broken = "npm ci"
		}, 1},
		{"after a failure", func() { p.broken = "" }, 1},
	}
	for _, step := range steps {
		step.change()
		p.ran = nil
		err := installNpm(p.machine, folder)
		if errors.Is(err, errPretended) != (p.broken != "") {
			t.Errorf("%s: %v", step.name, err)
		}
		if len(p.ran) != step.want {
			t.Errorf("%s: ran %q, want %d installations", step.name, p.ran, step.want)
		}
		if npmPresent(p.machine, folder) != (p.broken == "") {
			t.Errorf("%s: present is %v", step.name, npmPresent(p.machine, folder))
		}
	}
	for name, want := range map[string]string{
		"package.json":      `{"dependencies":{"fold":"0.12.0"}}`,
		"package-lock.json": `{"packages":{"node_modules/fold":{}}}`,
	} {
		if copied, err := os.ReadFile(filepath.Join(folder, name)); err != nil || string(copied) != want {
			t.Errorf("%s in the folder is %q, %v", name, copied, err)
		}
	}
}

func TestNpmFolderWithoutACache(t *testing.T) {
	p := pretend(t, "linux", true)
	p.cache = func() (string, error) { return "", errors.New("neither $XDG_CACHE_HOME nor $HOME are defined") }
	if got, want := npmFolder(p.machine), p.path("bin", ".outside"); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestMissingListOfNpmPackages(t *testing.T) {
	for _, name := range []string{listName, lockName} {
		p := pretend(t, "linux", true, allPrograms()...)
		os.Remove(p.path("testdata", "outside", name))
		if err := installNpm(p.machine, npmFolder(p.machine)); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("without %s: got %v", name, err)
		}
	}
}

// The lock holds every package of the list in its version, each with its sum, and names
// no server to fetch it from.
func TestLockOfNpmPackages(t *testing.T) {
	folder := filepath.Join(geomtest.Root(t), "testdata", "outside")
	var list struct{ Dependencies map[string]string }
	var lock struct {
		Packages map[string]struct{ Version, Integrity, Resolved string }
	}
	for name, into := range map[string]any{listName: &list, lockName: &lock} {
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err == nil {
			err = json.Unmarshal(data, into)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for name, version := range list.Dependencies {
		if got := lock.Packages["node_modules/"+name].Version; got != version {
			t.Errorf("the lock has %s %q, the list %q", name, got, version)
		}
	}
	for name, locked := range lock.Packages {
		if name != "" && !strings.HasPrefix(locked.Integrity, "sha512-") {
			t.Errorf("%s has the sum %q", name, locked.Integrity)
		}
		if locked.Resolved != "" {
			t.Errorf("%s names a server; write the lock with npm install --package-lock-only --omit-lockfile-registry-resolved", name)
		}
	}
}
