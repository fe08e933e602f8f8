package main

import (
	"errors"
	"go/version"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

func TestCheckersAreFetchedByModule(t *testing.T) {
	want := []string{
		"mvdan.cc/gofumpt@v0.12.0", "honnef.co/go/tools@v0.8.2", "golang.org/x/vuln@v1.9.0",
		"golang.org/x/vulndb@v0.0.0-20261105234957-e22db6528018",
	}
	if got := checkerModules(); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestCheckersSeeTheWindowWhereItBuilds(t *testing.T) {
	for _, test := range []struct {
		name, system string
		parts        []string
		want         string
	}{
		{"a Debian with headers", "linux", commandsOf(windowBuildParts()), "CGO_ENABLED=1"},
		{"a Debian without", "linux", nil, "CGO_ENABLED=0"},
		{"a Mac", "darwin", nil, "CGO_ENABLED=0"},
	} {
		p := pretend(t, test.system, false, test.parts...)
		if err := checkSource(p.machine); err != nil {
			t.Fatal(err)
		}
		inOrder(t, p.ran, []string{
			"CGO_ENABLED=0 go run " + formatter + " -l .",
			"STATICCHECK_CACHE=" + p.path("bin", "staticcheck") + " " + test.want + " go run " + linter + " ./...",
			"go list -m -f {{.Dir}} " + holeReports,
			"GOTOOLCHAIN=" + releaseGo + " CGO_ENABLED=0 go run " + holeChecker + " -db file:///reports/data/osv ./...",
		})
		if !strings.Contains(p.out.String(), "as known on 5 November 2026") {
			t.Errorf("%s: said %q", test.name, &p.out)
		}
	}
}

func TestCheckersThatComplain(t *testing.T) {
	for broken, remedy := range map[string]string{
		"gofumpt": "", "staticcheck": "", "govulncheck": "in go.mod", "list -m": "",
	} {
		p := pretend(t, "linux", false)
		p.broken = broken
		if err := checkSource(p.machine); !errors.Is(err, errPretended) || !strings.Contains(err.Error(), remedy) {
			t.Errorf("%s complains: got %v", broken, err)
		}
	}
	p := pretend(t, "linux", false)
	p.answers = map[string]string{"gofumpt": "a.go\nb/c.go\n"}
	if err := checkSource(p.machine); err == nil || !strings.Contains(err.Error(), "-w a.go b/c.go") {
		t.Errorf("gofumpt lists two files: got %v", err)
	}
}

func TestFileURL(t *testing.T) {
	for path, want := range map[string]string{
		"/home/a b/osv": "file:///home/a%20b/osv",
		"C:/go/pkg/osv": "file:///C:/go/pkg/osv",
	} {
		if got := fileURL(path); got != want {
			t.Errorf("%s: got %s, want %s", path, got, want)
		}
	}
}

// The module must allow the Go of releases, which the go command then fetches.
func TestReleaseGoIsNotOlderThanTheModule(t *testing.T) {
	output, err := exec.Command("go", "list", "-m", "-f", "{{.GoVersion}}").Output()
	if err != nil {
		t.Fatal(err)
	}
	least := "go" + strings.TrimSpace(string(output))
	if version.Compare(releaseGo, least) < 0 {
		t.Errorf("releases are built with %s, go.mod asks for %s", releaseGo, least)
	}
}

func TestRaceTakesOnePackageAtATime(t *testing.T) {
	p := pretend(t, "linux", true, "apt-get")
	if err := runRace(p.machine, nil); err != nil {
		t.Fatal(err)
	}
	inOrder(t, p.ran, []string{"apt-get", "update", "install", "CGO_ENABLED=1 go test -race -p 1 -count=1 -timeout 1h ./..."})
}
