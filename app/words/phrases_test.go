package words

import (
	"go/ast"
	"go/build"
	"go/constant"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

const phrasePath = "gussetwright/geometry/phrase"

const toolkitPath = "fyne.io/fyne/v2"

// textsOfPhrases gathers the formats and words of the phrases that the packages
// under geometry, render and app make: the constants that go to phrase.New and
// phrase.Errorf, through functions of the package too, and every constant of the type
// phrase.Word. Packages with widgets ask the toolkit for their texts, and make no
// phrases.
func textsOfPhrases(t *testing.T) texts {
	t.Helper()
	found := texts{}
	root := geomtest.Root(t)
	files := token.NewFileSet()
	packages := makersOfPhrases(t, files, root)
	from := importer.ForCompiler(files, "gc", compiled(t, root, slices.Sorted(maps.Keys(packages))))
	for path, parsed := range packages {
		p := phrases{t: t, files: files, root: root, parsed: parsed, found: found, followed: map[string]bool{}}
		p.info = &types.Info{
			Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{},
		}
		checking := types.Config{Importer: from}
		if _, err := checking.Check(path, files, parsed, p.info); err != nil {
			t.Fatalf("read %s: %v", path, err)
		}
		p.formats()
		p.words()
	}
	return found
}

// makersOfPhrases returns the packages that make phrases, by their folders.
func makersOfPhrases(t *testing.T, files *token.FileSet, root string) map[string][]*ast.File {
	t.Helper()
	packages := map[string][]*ast.File{}
	for _, part := range []string{"geometry", "render", "app"} {
		err := filepath.WalkDir(filepath.Join(root, part), func(path string, entry fs.DirEntry, err error) error {
			if err != nil || !entry.IsDir() || path == filepath.Join(root, "geometry", "phrase") {
				return err
			}
			switch parsed := parse(t, files, path); {
			case !imports(parsed, phrasePath):
			case imports(parsed, toolkitPath):
				noPhrases(t, files, parsed)
			default:
				packages[path] = parsed
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return packages
}

// compiled finds what packages import as the compiler left it, which is read far
// faster than the sources.
func compiled(t *testing.T, root string, folders []string) importer.Lookup {
	t.Helper()
	list := exec.Command("go", append([]string{"list", "-export", "-deps", "-f", "{{.ImportPath}} {{.Export}}"}, folders...)...)
	list.Dir, list.Stderr = root, os.Stderr
	output, err := list.Output()
	if err != nil {
		t.Fatalf("find what the packages import: %v", err)
	}
	places := map[string]string{}
	for line := range strings.Lines(string(output)) {
		path, file, _ := strings.Cut(strings.TrimSpace(line), " ")
		places[path] = file
	}
	return func(path string) (io.ReadCloser, error) { return os.Open(places[path]) }
}

// noPhrases complains about phrases that would not be gathered.
func noPhrases(t *testing.T, files *token.FileSet, parsed []*ast.File) {
	t.Helper()
	for _, file := range parsed {
		ast.Inspect(file, func(node ast.Node) bool {
			if call, is := node.(*ast.CallExpr); is {
				if name, of := selected(call.Fun); of == "phrase" && slices.Contains(makers, name) {
					t.Errorf("%s: phrase.%s beside widgets is not looked at; use lang.L", files.Position(call.Pos()), name)
				}
			}
			return true
		})
	}
}

// parse reads a package as it is built here.
func parse(t *testing.T, files *token.FileSet, folder string) []*ast.File {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	var parsed []*ast.File
	for _, path := range paths {
		if here, err := build.Default.MatchFile(folder, filepath.Base(path)); err != nil {
			t.Fatal(err)
		} else if !here || strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		parsed = append(parsed, file)
	}
	return parsed
}

// imports tells whether a package imports another, or one below it.
func imports(parsed []*ast.File, path string) bool {
	for _, file := range parsed {
		for _, imported := range file.Imports {
			if name, _ := strconv.Unquote(imported.Path.Value); name == path || strings.HasPrefix(name, path+"/") {
				return true
			}
		}
	}
	return false
}

// phrases gathers from one package.
type phrases struct {
	t        *testing.T
	files    *token.FileSet
	root     string
	parsed   []*ast.File
	info     *types.Info
	found    texts
	followed map[string]bool
}

// makers are the functions of package phrase that take a format.
var makers = []string{"New", "Errorf"}

// formats gathers the first argument of every call of a maker.
func (p *phrases) formats() {
	p.calls(func(callee types.Object) bool {
		return callee.Pkg() != nil && callee.Pkg().Path() == phrasePath && slices.Contains(makers, callee.Name())
	}, 0)
}

// calls gathers an argument of the calls of a function. Where the argument is a
// parameter of the function that calls, it goes on to the calls of that.
func (p *phrases) calls(wanted func(types.Object) bool, argument int) {
	for _, file := range p.parsed {
		for _, declaration := range file.Decls {
			function, _ := declaration.(*ast.FuncDecl)
			ast.Inspect(declaration, func(node ast.Node) bool {
				call, is := node.(*ast.CallExpr)
				if !is || argument >= len(call.Args) {
					return true
				}
				if callee := p.callee(call); callee == nil || !wanted(callee) {
					return true
				}
				p.take(function, call, call.Args[argument])
				return true
			})
		}
	}
}

func (p *phrases) callee(call *ast.CallExpr) types.Object {
	switch fun := call.Fun.(type) {
	case *ast.Ident:
		return p.info.Uses[fun]
	case *ast.SelectorExpr:
		return p.info.Uses[fun.Sel]
	}
	return nil
}

func (p *phrases) take(function *ast.FuncDecl, call *ast.CallExpr, argument ast.Expr) {
	if value := p.info.Types[argument].Value; value != nil {
		p.found.add(constant.StringVal(value), p.where(call))
		return
	}
	at, is := parameter(function, argument)
	if !is {
		p.t.Errorf("%s: the format of a phrase is not constant", p.where(call))
		return
	}
	itself := p.info.Defs[function.Name]
	if key := itself.Name() + strconv.Itoa(at); !p.followed[key] {
		p.followed[key] = true
		p.calls(func(callee types.Object) bool { return callee == itself }, at)
	}
}

// words gathers the constants of the type phrase.Word.
func (p *phrases) words() {
	for expression, is := range p.info.Types {
		named, isNamed := is.Type.(*types.Named)
		if !isNamed || is.Value == nil || named.Obj().Name() != "Word" || named.Obj().Pkg().Path() != phrasePath {
			continue
		}
		p.found.add(constant.StringVal(is.Value), p.where(expression))
	}
}

func (p *phrases) where(node ast.Node) string {
	position := p.files.Position(node.Pos())
	return strings.TrimPrefix(position.Filename, p.root+string(filepath.Separator)) + ":" + strconv.Itoa(position.Line)
}
