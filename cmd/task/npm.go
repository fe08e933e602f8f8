package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
)

// The files of an installation. The list names the packages, the lock what they need
// in turn, with the sums of all. installedName says for which of both an installation
// was finished. It is written last: one that was broken off is done again.
const (
	listName      = "package.json"
	lockName      = "package-lock.json"
	installedName = "installed.txt"
)

// npmFolder returns where the npm packages go: the cache folder of the user, or
// a folder under bin where there is none, as in a job without a home. Its name
// starts with a dot there so that ./... passes it by.
func npmFolder(m *machine) string {
	cache, err := m.cache()
	if err != nil {
		return m.path("bin", ".outside")
	}
	return filepath.Join(cache, "gussetwright", "outside")
}

// npmPackages is what is to be installed, as it stands in testdata/outside.
type npmPackages struct{ list, lock []byte }

// both is the list and the lock, one after the other.
func (p npmPackages) both() []byte { return slices.Concat(p.list, p.lock) }

// installNpm installs the packages of testdata/outside into folder, unless they are
// there.
func installNpm(m *machine, folder string) error {
	wanted, err := wantedNpm(m)
	if err != nil {
		return err
	}
	if npmInstalled(folder, wanted) {
		return nil
	}
	if err := prepareNpm(folder, wanted); err != nil {
		return fmt.Errorf("prepare the folder for npm packages: %w", err)
	}
	if err := m.run(npmCommand(folder)); err != nil {
		return fmt.Errorf("npm could not install the packages of testdata/outside/package-lock.json into %s: %w\n"+
			"Check the network and try again, or run the tests without them: go run ./cmd/task test -no-install", folder, err)
	}
	if err := os.WriteFile(filepath.Join(folder, installedName), wanted.both(), 0o644); err != nil {
		return fmt.Errorf("note that the npm packages are installed: %w", err)
	}
	return nil
}

func wantedNpm(m *machine) (wanted npmPackages, err error) {
	if wanted.list, err = os.ReadFile(m.path("testdata", "outside", listName)); err != nil {
		return wanted, fmt.Errorf("read the list of npm packages: %w", err)
	}
	if wanted.lock, err = os.ReadFile(m.path("testdata", "outside", lockName)); err != nil {
		return wanted, fmt.Errorf("read the versions and sums of the npm packages: %w", err)
	}
	return wanted, nil
}

// npmPresent tells whether folder holds the packages that the module lists.
func npmPresent(m *machine, folder string) bool {
	wanted, err := wantedNpm(m)
	return err == nil && npmInstalled(folder, wanted)
}

// npmInstalled tells whether folder holds the wanted packages.
func npmInstalled(folder string, wanted npmPackages) bool {
	installed, err := os.ReadFile(filepath.Join(folder, installedName))
	if err != nil || !bytes.Equal(installed, wanted.both()) {
		return false
	}
	modules, err := os.Stat(filepath.Join(folder, "node_modules"))
	return err == nil && modules.IsDir()
}

// prepareNpm empties the folder of an older installation and copies list and lock
// there.
func prepareNpm(folder string, wanted npmPackages) error {
	for _, old := range []string{installedName, "node_modules"} {
		if err := os.RemoveAll(filepath.Join(folder, old)); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(folder, listName), wanted.list, 0o644); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(folder, lockName), wanted.lock, 0o644)
}

// npmCommand installs exactly what the lock says, and refuses what has another sum.
// The lock names no server, so every user's own is asked.
func npmCommand(folder string) command {
	return command{folder: folder, words: []string{"npm", "ci", "--no-audit", "--no-fund", "--loglevel=error"}}
}
