package geomtest_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// Every exported name has a comment of its own or stands in a group with one, and so
// has every package. The form of the comments is up to staticcheck; fields of structs
// may be told of by the comment on the type.
func TestEveryExportedNameIsDocumented(t *testing.T) {
	names := 0
	described := map[string]bool{} // by folder
	for _, file := range sourceFiles(t) {
		parsed := parseSource(t, file)
		folder := filepath.Dir(file)
		described[folder] = described[folder] || parsed.Doc != nil
		for name, documented := range exportedNames(parsed) {
			names++
			if !documented {
				t.Errorf("%s: %s has no comment that says what it is", file, name)
			}
		}
	}
	for folder, ok := range described {
		if !ok {
			t.Errorf("%s: no file has a comment on the package", folder)
		}
	}
	if names < 500 {
		t.Errorf("only %d exported names looked at", names)
	}
}

// sourceFiles returns the Go files of the module that are no tests, relative to its
// top folder.
func sourceFiles(t *testing.T) []string {
	t.Helper()
	root := geomtest.Root(t)
	var files []string
	for _, layer := range layers {
		err := filepath.WalkDir(filepath.Join(root, layer), func(path string, entry fs.DirEntry, err error) error {
			if err == nil && !entry.IsDir() && strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go") {
				path, err = filepath.Rel(root, path)
				files = append(files, path)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return files
}

func parseSource(t *testing.T, file string) *ast.File {
	t.Helper()
	path := filepath.Join(geomtest.Root(t), file)
	parsed, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	return parsed
}

// exportedNames returns the names that other packages see, and whether they have a
// comment.
func exportedNames(file *ast.File) map[string]bool {
	names := map[string]bool{}
	for _, declaration := range file.Decls {
		switch d := declaration.(type) {
		case *ast.FuncDecl:
			if of := receiver(d); d.Name.IsExported() && (of == "" || ast.IsExported(of)) {
				names[strings.TrimPrefix(of+"."+d.Name.Name, ".")] = d.Doc != nil
			}
		case *ast.GenDecl:
			for _, spec := range d.Specs {
				addDeclared(names, spec, d.Doc != nil)
			}
		}
	}
	return names
}

// receiver returns the type that a method belongs to, "" for a function.
func receiver(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return ""
	}
	name := ""
	ast.Inspect(f.Recv.List[0].Type, func(node ast.Node) bool {
		if identifier, ok := node.(*ast.Ident); ok && name == "" {
			name = identifier.Name // before those of type parameters
		}
		return true
	})
	return name
}

func addDeclared(names map[string]bool, spec ast.Spec, grouped bool) {
	switch s := spec.(type) {
	case *ast.TypeSpec:
		if s.Name.IsExported() {
			names[s.Name.Name] = grouped || s.Doc != nil || s.Comment != nil
		}
	case *ast.ValueSpec:
		for _, name := range s.Names {
			if name.IsExported() {
				names[name.Name] = grouped || s.Doc != nil || s.Comment != nil
			}
		}
	}
}
