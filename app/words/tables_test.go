package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

// textsOfTables gathers the texts of the tables that the window shows.
func textsOfTables() texts {
	found := texts{}
	for _, field := range bag.Fields() {
		for _, text := range append([]string{field.Label, field.Help, field.WhyLeast, field.WhyMost}, field.Options...) {
			found.add(text, "field "+field.Path)
		}
	}
	found.add("yes", "value of a switch")
	found.add("no", "value of a switch")
	for _, label := range document.Labels() {
		found.add(label, "label of a change")
	}
	for _, kind := range export.Kinds() {
		found.add(kind.Title, "kind of file "+kind.Name)
		found.add(kind.Help, "kind of file "+kind.Name)
	}
	for _, party := range export.Parties() {
		found.add(party, "whom files are for")
	}
	for _, role := range scene.AllRoles() {
		found.add(role.Style().Help, "help of the role "+role.String())
	}
	return found
}

// textsOfBlanks gathers the names of pieces and cards, which stand in findings.
func textsOfBlanks() texts {
	found := texts{}
	random := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		laid := blank.Lay(geomtest.RandomBag(random))
		for _, piece := range laid.Pieces {
			found.add(piece.Name, "piece of a blank")
		}
		for _, card := range laid.Cards {
			found.add(string(card.Role), "card")
		}
	}
	return found
}

// toolkitFolders are the parts of the toolkit whose texts the user sees. Other parts
// belong to things that the window does not have, such as calendars.
var toolkitFolders = []string{"dialog", "internal/driver/glfw"}

var toolkitFiles = []string{"widget/entry.go", "widget/selectable.go"}

// textsOfToolkit gathers what the toolkit itself translates. A chosen language
// stands in the place of that of the system, where these would be missing.
func textsOfToolkit(t *testing.T) texts {
	t.Helper()
	list := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "fyne.io/fyne/v2")
	list.Stderr = os.Stderr
	output, err := list.Output()
	if err != nil {
		t.Fatalf("find the toolkit: %v", err)
	}
	toolkit := strings.TrimSpace(string(output))
	var paths []string
	for _, folder := range toolkitFolders {
		more, err := filepath.Glob(filepath.Join(toolkit, folder, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, more...)
	}
	for _, file := range toolkitFiles {
		paths = append(paths, filepath.Join(toolkit, file))
	}
	found := texts{}
	for _, path := range paths {
		if !strings.HasSuffix(path, "_test.go") {
			inToolkit(t, found, path)
		}
	}
	if len(found) < 10 {
		t.Fatalf("only %d texts in the toolkit", len(found))
	}
	return found
}

func inToolkit(t *testing.T, found texts, path string) {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(file, func(node ast.Node) bool {
		call, is := node.(*ast.CallExpr)
		if !is || len(call.Args) == 0 {
			return true
		}
		if name, of := selected(call.Fun); of != "lang" || name != "L" && name != "X" {
			return true
		}
		if literal, is := call.Args[0].(*ast.BasicLit); is {
			if text, err := strconv.Unquote(literal.Value); err == nil {
				found.add(text, "the toolkit, "+filepath.Base(path))
			}
		}
		return true
	})
}
