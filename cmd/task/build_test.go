package main

import (
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The go command must know every platform by the same words.
func TestPlatformsAreKnownToGo(t *testing.T) {
	output, err := exec.Command("go", "tool", "dist", "list").Output()
	if err != nil {
		t.Fatal(err)
	}
	known := strings.Fields(string(output))
	for _, p := range platforms() {
		if !slices.Contains(known, p.system+"/"+p.processor) {
			t.Errorf("go tool dist list has no %s/%s", p.system, p.processor)
		}
	}
}

func TestDemoProject(t *testing.T) {
	tests := []struct {
		files []string
		want  string
	}{
		{[]string{"bag.json", "tea-house.gusset", "notes.txt"}, "tea-house.gusset"},
		{[]string{"bag.json", "front.svg"}, "bag.json"},
		{[]string{"front.svg"}, ""},
	}
	for _, test := range tests {
		folder := t.TempDir()
		for _, name := range test.files {
			writeFile(t, filepath.Join(folder, name), "")
		}
		got, err := demoProject(folder)
		if (err != nil) != (test.want == "") || err == nil && got != filepath.Join(folder, test.want) {
			t.Errorf("%v: got %q, %v; want %q", test.files, got, err, test.want)
		}
	}
}

func TestRunOpensTheWindow(t *testing.T) {
	for _, test := range []struct {
		name, system string
		screen       bool
		broken       string
		want         []string
		says         string
	}{
		{"a desktop", "windows", false, "", []string{"CGO_ENABLED=1 go build -o", "gussetwright.exe", "dist/tea-house.gusset"}, ""},
		{"a desktop on Debian", "linux", true, "", []string{"apt-get", "update", "install", "libgl-dev", "go build -o", "dist/tea-house.gusset"}, ""},
		{"no display", "linux", false, "", exportCommands, "no display"},
		{"no compiler", "darwin", false, "CGO_ENABLED=1", append([]string{"CGO_ENABLED=1 go build"}, exportCommands...), "C compiler"},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := pretend(t, test.system, true, "apt-get")
			p.screen, p.broken = test.screen, test.broken
			writeFile(t, p.path("assets", "demo", "tea-house.gusset"), "bag")
			writeFile(t, p.path("dist", "demo", "tea-house-dieline.pdf"), "")
			if err := runDemo(p.machine, nil); err != nil {
				t.Fatal(err)
			}
			inOrder(t, p.ran, test.want)
			if !strings.Contains(p.out.String(), test.says) {
				t.Errorf("said %q, want %q", &p.out, test.says)
			}
		})
	}
}

// exportCommands are what stands in for the window.
var exportCommands = []string{"go build -o", "./cmd/gwbatch", "describe", "tea-house.gusset", "export --to", "tea-house.gusset"}
