package main

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

func TestEnvironmentIsTheOneThatTestsRead(t *testing.T) {
	if outsideEnv != geomtest.OutsideEnv {
		t.Errorf("the task sets %s, the tests read %s", outsideEnv, geomtest.OutsideEnv)
	}
}

func TestSetUpThenCheck(t *testing.T) {
	tests := []struct {
		name    string
		system  string
		root    bool
		has     []string
		args    []string
		want    []string // a part of each command, in order
		outside bool     // the tests are told that every tool is there
		says    string
	}{
		{
			"a bare Debian", "linux", true,
			[]string{"apt-get"},
			nil,
			[]string{
				"apt-get", "update", "install -y", "npm ci", "go mod download", "go vet -composites=false ./...",
				formatter, linter, holeChecker, "go test -count=1 ./...",
				"go vet -composites=false ./cmd/gussetwright", "go build -o", "./cmd/gussetwright",
			},
			true, "as known on",
		},
		{
			"a complete machine", "darwin", false, allPrograms("brew"), nil,
			[]string{"npm ci", "go mod download", "go vet", formatter, linter, holeChecker, "go test"},
			true, "real window were left out",
		},
		{
			"a bare Mac", "darwin", false,
			[]string{"brew"},
			nil,
			[]string{"go mod download", "go vet", formatter, linter, holeChecker, "go test"},
			false, "brew install qpdf poppler",
		},
		{
			"a Mac with node alone", "darwin", false,
			[]string{"brew", "node", "npm"},
			nil,
			[]string{"npm ci", "go mod download", "go vet", formatter, linter, holeChecker, "go test"},
			false, "brew install qpdf poppler",
		},
		{
			"Debian without a network", "linux", true,
			[]string{"apt-get"},
			[]string{"-no-install"},
			[]string{"go vet", "go test"},
			false, "sudo apt-get install qpdf",
		},
		{
			"programs but no npm packages and no network", "linux", true, allPrograms("apt-get"),
			[]string{"-no-install"},
			[]string{"go vet", "go test"},
			false, "npm packages were skipped",
		},
		{
			"a bare machine and no network", "linux", true, nil,
			[]string{"-no-install"},
			[]string{"go vet", "go test"},
			false, "staticcheck and govulncheck were left out",
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := pretend(t, test.system, test.root, test.has...)
			if err := runTests(p.machine, test.args); err != nil {
				t.Fatal(err)
			}
			inOrder(t, p.ran, test.want)
			last := wholeTest(t, p.ran)
			folder := outsideEnv + "=" + filepath.Join(p.root, "cache", "gussetwright", "outside")
			if strings.Contains(last, folder) != test.outside {
				t.Errorf("the tests ran as %s", last)
			}
			if !strings.Contains(last, "CGO_ENABLED=0") {
				t.Errorf("the tests ran with cgo: %s", last)
			}
			if !strings.Contains(p.out.String(), test.says) {
				t.Errorf("said %q, want %q", &p.out, test.says)
			}
		})
	}
}

// wholeTest returns the command that tested every package.
func wholeTest(t *testing.T, ran []string) string {
	t.Helper()
	for _, line := range ran {
		if strings.HasSuffix(line, "go test -count=1 ./...") {
			return line
		}
	}
	t.Fatalf("no test of every package in\n%s", strings.Join(ran, "\n"))
	return ""
}

// inOrder checks that the wanted words occur in the commands one after the other
// and that no command is left over.
func inOrder(t *testing.T, ran, want []string) {
	t.Helper()
	all := strings.Join(ran, "\n")
	rest := all
	for _, words := range want {
		_, after, found := strings.Cut(rest, words)
		if !found {
			t.Errorf("no %q in its place in\n%s", words, all)
			return
		}
		rest = after
	}
	if strings.Contains(rest, "\n") {
		t.Errorf("commands after the last wanted one in\n%s", all)
	}
}

func TestSecondRunInstallsNothing(t *testing.T) {
	p := pretend(t, "linux", true, "apt-get")
	for range 2 {
		p.ran = nil
		if err := runTests(p.machine, nil); err != nil {
			t.Fatal(err)
		}
	}
	all := strings.Join(p.ran, "\n")
	if strings.Contains(all, "apt-get") || strings.Contains(all, "npm") ||
		!strings.Contains(all, outsideEnv) || !strings.Contains(p.ran[len(p.ran)-1], "CGO_ENABLED=1") {
		t.Errorf("the second run did\n%s", all)
	}
}

func TestFailedSetUpStillTestsButFails(t *testing.T) {
	for _, broken := range []string{"apt-get", "npm ci", "go mod download"} {
		p := pretend(t, "linux", true, "apt-get")
		p.broken = broken
		err := runTests(p.machine, nil)
		if !errors.Is(err, errPretended) {
			t.Errorf("%s fails: got %v", broken, err)
		}
		last := wholeTest(t, p.ran)
		if strings.Contains(last, outsideEnv) {
			t.Errorf("%s fails: the last command was %s", broken, last)
		}
	}
}

func TestFailedCheckEndsTheRun(t *testing.T) {
	p := pretend(t, "linux", true, allPrograms()...)
	p.broken = "go vet"
	if err := runTests(p.machine, nil); !errors.Is(err, errPretended) {
		t.Errorf("got %v", err)
	}
	if last := p.ran[len(p.ran)-1]; !strings.Contains(last, "go vet") {
		t.Errorf("after vet failed it ran %s", last)
	}
	p = pretend(t, "linux", true, allPrograms()...)
	writeFile(t, p.path("bad.go"), "package  bad\n")
	if err := runTests(p.machine, nil); err == nil || !strings.Contains(err.Error(), "bad.go") {
		t.Errorf("got %v, want a complaint about bad.go", err)
	}
}
