package words

import (
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// texts gathers English texts and where each is written.
type texts map[string]string

func (t texts) add(text, where string) {
	if _, known := t[text]; !known && text != "" {
		t[text] = where
	}
}

// asked are the functions of the toolkit that translate their first argument.
var asked = []string{"L", "Localize"}

// tables are the expressions, by their ends, that are no literals and may be
// translated all the same: texts out of tables that are gathered from the tables
// themselves.
var tables = []string{
	".Label", ".Help", ".WhyLeast", ".WhyMost", // of bag.Fields
	".Title", "party", // of export.Kinds and export.Parties
	"(s.Spec.Sheet.GripperEdge)", // an option of bag.Fields
	"change.From", "change.To",   // a choice or a switch, else no word
	"why", // the reason for a limit
}

// fromTable tells whether an expression is one of tables.
func fromTable(expression string) bool {
	return slices.ContainsFunc(tables, func(end string) bool { return strings.HasSuffix(expression, end) })
}

// collector gathers the texts of one package.
type collector struct {
	t     *testing.T
	files *token.FileSet
	root  string
	found texts
	// helpers are functions of the package that translate a parameter, with its
	// place.
	helpers map[string]int
}

// textsInCode gathers the literals in every package under app, and complains about
// what is neither a literal nor out of a table.
func textsInCode(t *testing.T) texts {
	t.Helper()
	found := texts{}
	root := geomtest.Root(t)
	err := filepath.WalkDir(filepath.Join(root, "app"), func(path string, entry fs.DirEntry, err error) error {
		if err == nil && entry.IsDir() {
			c := collector{t: t, files: token.NewFileSet(), root: root, found: found, helpers: map[string]int{}}
			c.inFolder(path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func (c *collector) inFolder(folder string) {
	paths, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		c.t.Fatal(err)
	}
	var parsed []*ast.File
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(c.files, path, nil, parser.SkipObjectResolution)
		if err != nil {
			c.t.Errorf("%v", err)
			continue
		}
		parsed = append(parsed, file)
	}
	for _, file := range parsed {
		c.inFile(file)
	}
	for _, file := range parsed {
		c.callsOfHelpers(file)
	}
}

// inFile looks at every call of the toolkit.
func (c *collector) inFile(file *ast.File) {
	for _, declaration := range file.Decls {
		function, _ := declaration.(*ast.FuncDecl)
		sayers := map[string]bool{}
		ast.Inspect(declaration, func(node ast.Node) bool {
			if literal, is := node.(*ast.FuncLit); is && takesText(literal.Type) && len(literal.Type.Params.List[0].Names) == 1 {
				// It is handed to what says a phrase; phrases are gathered elsewhere.
				sayers[literal.Type.Params.List[0].Names[0].Name] = true
			}
			call, is := node.(*ast.CallExpr)
			if !is || len(call.Args) == 0 {
				return true
			}
			name, of := selected(call.Fun)
			if of != "lang" {
				return true
			}
			if !slices.Contains(asked, name) {
				if slices.Contains([]string{"N", "X", "XN"}, name) || strings.HasPrefix(name, "Localize") {
					c.t.Errorf("%s: lang.%s is not looked at here; use lang.L", c.where(call), name)
				}
				return true
			}
			if at, is := parameter(function, call.Args[0]); is {
				c.helpers[function.Name.Name] = at
				return true
			}
			if name, is := call.Args[0].(*ast.Ident); is && sayers[name.Name] {
				return true
			}
			c.take(call, call.Args[0])
			return true
		})
	}
}

// callsOfHelpers looks at every call of a function that translates a parameter.
func (c *collector) callsOfHelpers(file *ast.File) {
	ast.Inspect(file, func(node ast.Node) bool {
		call, is := node.(*ast.CallExpr)
		if !is {
			return true
		}
		name := ""
		switch fun := call.Fun.(type) {
		case *ast.Ident:
			name = fun.Name
		case *ast.SelectorExpr:
			name = fun.Sel.Name
		}
		if at, known := c.helpers[name]; known && at < len(call.Args) {
			c.take(call, call.Args[at])
		}
		return true
	})
}

// take gathers a text, or complains where it is no literal.
func (c *collector) take(call *ast.CallExpr, argument ast.Expr) {
	literal, is := argument.(*ast.BasicLit)
	if !is {
		if text := source(c.files, argument); !fromTable(text) {
			c.t.Errorf("%s: %s is translated, but is neither a literal nor out of a table", c.where(call), text)
		}
		return
	}
	text, err := strconv.Unquote(literal.Value)
	if err != nil {
		c.t.Errorf("%s: %v", c.where(call), err)
	}
	if strings.Contains(text, "{{") {
		c.t.Errorf("%s: %q would be read as a template", c.where(call), text)
	}
	c.found.add(text, c.where(call))
}

func (c *collector) where(node ast.Node) string {
	position := c.files.Position(node.Pos())
	return strings.TrimPrefix(position.Filename, c.root+string(filepath.Separator)) + ":" + strconv.Itoa(position.Line)
}

// parameter tells whether an expression is a parameter of a function, and which.
func parameter(function *ast.FuncDecl, expression ast.Expr) (at int, is bool) {
	name, is := expression.(*ast.Ident)
	if function == nil || !is {
		return 0, false
	}
	for _, field := range function.Type.Params.List {
		for _, parameter := range field.Names {
			if parameter.Name == name.Name {
				return at, true
			}
			at++
		}
	}
	return 0, false
}

// takesText tells whether a function takes a text and returns one.
func takesText(function *ast.FuncType) bool {
	isText := func(list *ast.FieldList) bool {
		if list == nil || len(list.List) != 1 {
			return false
		}
		kind, is := list.List[0].Type.(*ast.Ident)
		return is && kind.Name == "string" && len(list.List[0].Names) < 2
	}
	return isText(function.Params) && isText(function.Results)
}

func selected(fun ast.Expr) (name, of string) {
	selector, is := fun.(*ast.SelectorExpr)
	if !is {
		return "", ""
	}
	if x, is := selector.X.(*ast.Ident); is {
		return selector.Sel.Name, x.Name
	}
	return selector.Sel.Name, ""
}

func source(files *token.FileSet, expression ast.Expr) string {
	var text strings.Builder
	if err := printer.Fprint(&text, files, expression); err != nil {
		return err.Error()
	}
	return text.String()
}
