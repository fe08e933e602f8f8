package main

import (
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestBenchRunsNoTest(t *testing.T) {
	p := pretend(t, "linux", false)
	if err := runBenchmarks(p.machine, nil); err != nil {
		t.Fatal(err)
	}
	want := []string{"CGO_ENABLED=0 go test -run '^$' -bench . -benchmem ./..."}
	if !slices.Equal(p.ran, want) {
		t.Errorf("ran %q, want %q", p.ran, want)
	}
}

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

func TestPackageBuildsEveryPlatform(t *testing.T) {
	p := pretend(t, "linux", false)
	for _, built := range platforms() {
		writeFile(t, p.path(built.file()), "program")
	}
	if err := buildPackages(p.machine, nil); err != nil {
		t.Fatal(err)
	}
	if len(p.ran) != 6 {
		t.Errorf("ran %d commands, want 6", len(p.ran))
	}
	want := "GOOS=windows GOARCH=arm64 CGO_ENABLED=0 go build -trimpath -ldflags '-s -w' -o " +
		quoted([]string{filepath.Join("dist", "gwbatch-windows-arm64.exe")})[0] + " ./cmd/gwbatch"
	if last := p.ran[len(p.ran)-1]; last != want {
		t.Errorf("ran %s, want %s", last, want)
	}
	for _, built := range platforms() {
		if !strings.Contains(p.out.String(), filepath.Base(built.file())) {
			t.Errorf("%s is not listed in %q", built.file(), &p.out)
		}
	}
}

func TestPackageThatWasNotBuilt(t *testing.T) {
	p := pretend(t, "linux", false)
	if err := buildPackages(p.machine, nil); err == nil {
		t.Error("no error although no file was built")
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

func TestRunBuildsAndShowsTheDemo(t *testing.T) {
	p := pretend(t, "windows", false)
	writeFile(t, p.path("assets", "demo", "tea-house.gusset"), "")
	writeFile(t, p.path("dist", "demo", "tea-house-dieline.pdf"), "")
	if err := runDemo(p.machine, nil); err != nil {
		t.Fatal(err)
	}
	inOrder(t, p.ran, []string{"go build -o", "gwbatch.exe", "./cmd/gwbatch", "gwbatch.exe", "describe", "tea-house.gusset",
		"gwbatch.exe", "export --to", "tea-house.gusset"})
	if !strings.Contains(p.out.String(), "tea-house-dieline.pdf") {
		t.Errorf("the files are not listed in %q", &p.out)
	}
}
