package limits_test

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// Every limit has a value above 0 and a reason, and the table of them is up to date.
func TestTableOfLimits(t *testing.T) {
	files, fileSet := parseSource(t)
	checked := types.Info{Defs: map[*ast.Ident]types.Object{}}
	if _, err := new(types.Config).Check("limits", fileSet, files, &checked); err != nil {
		t.Fatal(err)
	}
	var table strings.Builder
	fmt.Fprint(&table, "# Limits on files from outside\n\nMade by the tests of `render/limits`; a new limit appears after `go run ./cmd/task golden`.\n")
	count := 0
	for _, file := range files {
		for _, declaration := range file.Decls {
			group, ok := declaration.(*ast.GenDecl)
			if !ok || group.Tok != token.CONST || !ast.IsExported(firstName(group)) {
				continue
			}
			fmt.Fprintf(&table, "\n%s\n\n| limit | value | why |\n| --- | ---: | --- |\n", onOneLine(group.Doc))
			for _, spec := range group.Specs {
				limit := spec.(*ast.ValueSpec)
				name := limit.Names[0]
				value := checked.Defs[name].(*types.Const).Val()
				if limit.Doc == nil || constant.Sign(value) <= 0 {
					t.Errorf("%s has the value %s and the reason %q", name, value, onOneLine(limit.Doc))
				}
				fmt.Fprintf(&table, "| `%s` | %s | %s |\n", name, inUnits(name.Name, value), onOneLine(limit.Doc))
				count++
			}
		}
	}
	if count < 40 {
		t.Errorf("only %d limits found", count)
	}
	geomtest.Golden(t, "limits/table.md", []byte(table.String()))
}

func parseSource(t *testing.T) ([]*ast.File, *token.FileSet) {
	t.Helper()
	folder := filepath.Join(geomtest.Root(t), "render", "limits")
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	fileSet := token.NewFileSet()
	var files []*ast.File
	for _, entry := range entries {
		if strings.HasSuffix(entry.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(fileSet, filepath.Join(folder, entry.Name()), nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	return files, fileSet
}

func firstName(group *ast.GenDecl) string { return group.Specs[0].(*ast.ValueSpec).Names[0].Name }

func onOneLine(comment *ast.CommentGroup) string {
	return strings.Join(strings.Fields(comment.Text()), " ")
}

// inUnits writes a value as people read it: bytes as MiB, and thousands apart.
func inUnits(name string, value constant.Value) string {
	number, _ := constant.Int64Val(constant.ToInt(value))
	if strings.HasSuffix(name, "Bytes") && number >= 1<<20 {
		return fmt.Sprintf("%s MiB", apart(number>>20))
	}
	if strings.HasSuffix(name, "Bytes") && number%1024 == 0 {
		return fmt.Sprintf("%d KiB", number>>10)
	}
	return apart(number)
}

// apart writes a number with a space before each three digits.
func apart(number int64) string {
	if number < 10_000 {
		return fmt.Sprint(number)
	}
	digits := fmt.Sprint(number)
	var parts []string
	for len(digits) > 3 {
		parts = append([]string{digits[len(digits)-3:]}, parts...)
		digits = digits[:len(digits)-3]
	}
	return strings.Join(append([]string{digits}, parts...), " ")
}
