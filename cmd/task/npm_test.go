package main

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
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
		{"the packages were deleted", func() { os.RemoveAll(filepath.Join(folder, "node_modules")) }, 1},
		{"npm fails half way", func() {
			os.RemoveAll(filepath.Join(folder, "node_modules"))
			writeFile(t, filepath.Join(folder, "node_modules", "half"), "")
			os.Remove(filepath.Join(folder, installedName))
			p.broken = "npm install"
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
	copied, err := os.ReadFile(filepath.Join(folder, "package.json"))
	if err != nil || string(copied) != `{"dependencies":{"fold":"0.12.0"}}` {
		t.Errorf("the list in the folder is %q, %v", copied, err)
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
	p := pretend(t, "linux", true, allPrograms()...)
	os.Remove(p.path("testdata", "outside", "package.json"))
	if err := installNpm(p.machine, npmFolder(p.machine)); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}
