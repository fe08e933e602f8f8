package geomtest_test

import (
	"bufio"
	"bytes"
	"os/exec"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// layers lists the folders from the lowest up: a package may import its own layer
// and those before it.
var layers = []string{"geometry", "render", "assets", "app", "cmd"}

// barred lists imports that a folder must do without, whatever its layer.
var barred = map[string][]string{
	"geometry":     {"os", "image", "image/color", "io/fs", "path/filepath", "fyne.io"},
	"render":       {"os", "path/filepath", "fyne.io"},
	"app/document": {"fyne.io"},
	"app/project":  {"fyne.io"},
	"app/batch":    {"fyne.io"},
	"app/export":   {"fyne.io"},
	"app/session":  {"fyne.io"},
	"app/jobs":     {"fyne.io"},
}

func TestImportsPointOneWay(t *testing.T) {
	packages := 0
	for name, imports := range importsOfAll(t) {
		packages++
		if name == "geometry/geomtest" {
			continue // tests alone import it, and it reads files
		}
		for _, imported := range imports {
			if inside, ours := strings.CutPrefix(imported, "gussetwright/"); ours && layer(t, inside) > layer(t, name) {
				t.Errorf("%s imports %s, against the arrows", name, inside)
			}
			for folder, list := range barred {
				if name != folder && !strings.HasPrefix(name, folder+"/") {
					continue
				}
				for _, bar := range list {
					if imported == bar || strings.HasPrefix(imported, bar+"/") && strings.Contains(bar, ".") {
						t.Errorf("%s imports %s, which %s must do without", name, imported, folder)
					}
				}
			}
		}
	}
	if packages < 15 {
		t.Errorf("only %d packages looked at", packages)
	}
}

func layer(t *testing.T, name string) int {
	t.Helper()
	top, _, _ := strings.Cut(name, "/")
	for i, l := range layers {
		if l == top {
			return i
		}
	}
	t.Fatalf("package %s stands outside of the layers %v", name, layers)
	return 0
}

// importsOfAll asks the go command for the imports of every package.
func importsOfAll(t *testing.T) map[string][]string {
	t.Helper()
	command := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "./...")
	command.Dir = geomtest.Root(t)
	output, err := command.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	imports := map[string][]string{}
	lines := bufio.NewScanner(bytes.NewReader(output))
	for lines.Scan() {
		words := strings.Fields(lines.Text())
		imports[strings.TrimPrefix(words[0], "gussetwright/")] = words[1:]
	}
	return imports
}
