package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
)

// installedName is the file that says for which package.json an installation was
// finished. It is written last: one that was broken off is done again.
const installedName = "installed.json"

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

// installNpm installs the packages of testdata/outside/package.json into folder,
// unless they are there.
func installNpm(m *machine, folder string) error {
	wanted, err := npmList(m)
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
		return fmt.Errorf("npm could not install the packages of testdata/outside/package.json into %s: %w\n"+
			"Check the network and try again, or run the tests without them: go run ./cmd/task test -no-install", folder, err)
	}
	if err := os.WriteFile(filepath.Join(folder, installedName), wanted, 0o644); err != nil {
		return fmt.Errorf("note that the npm packages are installed: %w", err)
	}
	return nil
}

func npmList(m *machine) ([]byte, error) {
	list, err := os.ReadFile(m.path("testdata", "outside", "package.json"))
	if err != nil {
		return nil, fmt.Errorf("read the list of npm packages: %w", err)
	}
	return list, nil
}

// npmPresent tells whether folder holds the packages that the module lists.
func npmPresent(m *machine, folder string) bool {
	wanted, err := npmList(m)
	return err == nil && npmInstalled(folder, wanted)
}

// npmInstalled tells whether folder holds the wanted packages.
func npmInstalled(folder string, wanted []byte) bool {
	installed, err := os.ReadFile(filepath.Join(folder, installedName))
	if err != nil || !bytes.Equal(installed, wanted) {
		return false
	}
	modules, err := os.Stat(filepath.Join(folder, "node_modules"))
	return err == nil && modules.IsDir()
}

// prepareNpm empties the folder of an older installation and copies the list there.
func prepareNpm(folder string, wanted []byte) error {
	for _, old := range []string{installedName, "package-lock.json", "node_modules"} {
		if err := os.RemoveAll(filepath.Join(folder, old)); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(folder, "package.json"), wanted, 0o644)
}

func npmCommand(folder string) command {
	return command{folder: folder, words: []string{"npm", "install", "--no-audit", "--no-fund", "--loglevel=error"}}
}
