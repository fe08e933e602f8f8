package main

import (
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const formatted = "package p\n\nfunc f() {\n}\n"

func sourceTree(t *testing.T) string {
	t.Helper()
	root := t.TempDir()
	for path, content := range map[string]string{
		"go.mod":                    "module m\n\ngo 1.24\n",
		"good.go":                   formatted,
		"bad.go":                    "package p\nfunc g( ) {}\n",
		"below/bad_indent.go":       "package below\n\nfunc f() {\n  f()\n}\n",
		"bin/built.go":              "package  built\n",
		"dist/built.go":             "package  built\n",
		".hidden/other.go":          "package  other\n",
		"below/node_modules/odd.go": "package  odd\n",
	} {
		writeFile(t, filepath.Join(root, filepath.FromSlash(path)), content)
	}
	return root
}

func TestUnformattedFiles(t *testing.T) {
	root := sourceTree(t)
	got, err := unformattedFiles(root)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"bad.go", filepath.Join("below", "bad_indent.go")}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// The program gofmt itself must list the same files.
func TestUnformattedFilesAgreesWithGofmt(t *testing.T) {
	gofmt, err := exec.LookPath("gofmt")
	if err != nil {
		t.Skip("gofmt is not on the PATH")
	}
	root := sourceTree(t)
	command := exec.Command(gofmt, "-l", "good.go", "bad.go", "below/bad_indent.go")
	command.Dir = root
	output, err := command.Output()
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Fields(filepath.FromSlash(string(output)))
	if got, err := unformattedFiles(root); err != nil || !slices.Equal(got, want) {
		t.Errorf("got %v, %v; gofmt -l says %v", got, err, want)
	}
}

func TestFileThatIsNoGo(t *testing.T) {
	root := t.TempDir()
	writeFile(t, filepath.Join(root, "broken.go"), "not Go at all")
	if _, err := unformattedFiles(root); err == nil || !strings.Contains(err.Error(), "broken.go") {
		t.Errorf("got %v, want a complaint about broken.go", err)
	}
}
