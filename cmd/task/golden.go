package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// geomtestPath is the package that registers -update and holds golden files.
const geomtestPath = "gussetwright/geometry/geomtest"

// importsFormat prints a package and the imports of its tests on one line.
const importsFormat = `{{.ImportPath}} {{join .TestImports " "}} {{join .XTestImports " "}}`

// writeGolden runs the tests that know -update with it. A test that does not know
// the flag would fail over it, so only importers of geomtest are run.
func writeGolden(m *machine, args []string) error {
	if err := noMore(args); err != nil {
		return err
	}
	list, err := m.read(goTool("list", "-f", importsFormat, "./..."))
	if err != nil {
		return fmt.Errorf("find the packages with golden files: %w", err)
	}
	packages := importersOf(geomtestPath, list)
	if len(packages) == 0 {
		return errors.New("no package has tests with golden files")
	}
	if err := m.run(goldenCommand(packages)); err != nil {
		return err
	}
	fmt.Fprint(m.out, "\nThe golden files say what is written now. Read the whole difference before you commit it:\n"+
		"  git status --short testdata/golden\n  git diff testdata/golden\n")
	return nil
}

func goldenCommand(packages []string) command {
	words := append([]string{"test", "-count=1"}, packages...)
	return goTool(append(words, "-args", "-update")...)
}

// importersOf reads lines of a package and the imports of its tests, and returns
// the packages that import the given one.
func importersOf(path, list string) []string {
	var packages []string
	for line := range strings.Lines(list) {
		words := strings.Fields(line)
		if len(words) > 1 && slices.Contains(words[1:], path) {
			packages = append(packages, words[0])
		}
	}
	return packages
}
