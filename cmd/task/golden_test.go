package main

import (
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

func TestImportersOf(t *testing.T) {
	const list = `m/a m/geomtest testing
m/b testing
m/c os m/geomtest
m/d
m/geomtest
m/e m/geomtest/more
`
	if got, want := importersOf("m/geomtest", list), []string{"m/a", "m/c"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// This package's own tests import geomtest, so the go command must name it.
func TestImportersAreFoundByTheGoCommand(t *testing.T) {
	list, err := readHere(geomtest.Root(t), goTool("list", "-f", importsFormat, "./cmd/task"))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := importersOf(geomtestPath, list), []string{"gussetwright/cmd/task"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

func TestGoldenUpdatesImportersAlone(t *testing.T) {
	p := pretend(t, "linux", false)
	p.read = func(command) (string, error) { return "m/a " + geomtestPath + "\nm/b testing\n", nil }
	if err := writeGolden(p.machine, nil); err != nil {
		t.Fatal(err)
	}
	want := []string{"CGO_ENABLED=0 go test -count=1 m/a -args -update"}
	if !slices.Equal(p.ran, want) {
		t.Errorf("ran %q, want %q", p.ran, want)
	}
	if !strings.Contains(p.out.String(), "git diff testdata/golden") {
		t.Errorf("no word of the review in %q", &p.out)
	}
}

func TestNoGoldenFilesAtAll(t *testing.T) {
	p := pretend(t, "linux", false)
	if err := writeGolden(p.machine, nil); err == nil {
		t.Error("no error without a package to update")
	}
}
