package main

import (
	"cmp"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// fuzzTarget is a fuzz function and where it stands.
type fuzzTarget struct {
	folder string // relative to the module, with slashes
	name   string
}

func (t fuzzTarget) String() string { return t.name + " in " + t.folder }

// command returns the command that fuzzes the target alone.
func (t fuzzTarget) command(each time.Duration) command {
	return goTool("test", "-run", "^$", "-fuzz", "^"+t.name+"$", "-fuzztime", each.String(), "-fuzzminimizetime", "1s", "./"+t.folder)
}

// runFuzz gives every target its time and reports which broke.
func runFuzz(m *machine, args []string) error {
	options := flag.NewFlagSet("fuzz", flag.ContinueOnError)
	each := options.Duration("time", time.Minute, "")
	words, err := parse(options, args)
	if err != nil {
		return err
	}
	if *each <= 0 {
		return usageError{fmt.Sprintf("-time is %v: give a time such as 30s or 5m", *each)}
	}
	all, err := fuzzTargets(m.root)
	if err != nil {
		return err
	}
	targets := namedLike(all, words)
	if len(targets) == 0 {
		return fmt.Errorf("no fuzz target is named like %q; there are %d in the module", words, len(all))
	}
	return fuzzEach(m, targets, *each)
}

func fuzzEach(m *machine, targets []fuzzTarget, each time.Duration) error {
	var report strings.Builder
	var firstErr error
	failed := 0
	for _, target := range targets {
		before := target.finds(m)
		err := m.run(target.command(each))
		verdict := "held"
		if err != nil {
			failed++
			firstErr = cmp.Or(firstErr, err)
			verdict = failure(before, target.finds(m))
		}
		fmt.Fprintf(&report, "  %s: %s\n", target, verdict)
	}
	fmt.Fprintf(m.out, "\nfuzzed %v each:\n%s", each, report.String())
	if failed > 0 {
		return fmt.Errorf("%d of %d targets did not hold: %w", failed, len(targets), firstErr)
	}
	return nil
}

// failure says what a failed run of a target means. Go stores the input that
// broke a target; without one the run itself went wrong, as when a busy machine
// lets it overrun its time.
func failure(before, after []string) string {
	for _, path := range after {
		if !slices.Contains(before, path) {
			return "BROKE, see " + path
		}
	}
	if len(after) > 0 {
		return "FAILED and stored no new input; read its output above, an input found earlier may still break it"
	}
	return "FAILED without an input that broke it; read its output above and run it again"
}

// finds returns the stored inputs that once broke the target.
func (t fuzzTarget) finds(m *machine) []string {
	paths, err := filepath.Glob(m.path(filepath.FromSlash(t.folder), "testdata", "fuzz", t.name, "*"))
	if err != nil {
		return nil // only a malformed pattern is an error, and a name cannot be one
	}
	return paths
}

// namedLike returns the targets whose name contains one of the words; no words
// ask for all.
func namedLike(targets []fuzzTarget, words []string) []fuzzTarget {
	if len(words) == 0 {
		return targets
	}
	var chosen []fuzzTarget
	for _, target := range targets {
		for _, word := range words {
			if strings.Contains(strings.ToLower(target.name), strings.ToLower(word)) {
				chosen = append(chosen, target)
				break
			}
		}
	}
	return chosen
}

// fuzzTargets returns every fuzz function of the module, by folder.
func fuzzTargets(root string) ([]fuzzTarget, error) {
	files, err := goFiles(root)
	if err != nil {
		return nil, err
	}
	var targets []fuzzTarget
	for _, file := range files {
		if !strings.HasSuffix(file, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, file), nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, fmt.Errorf("look for fuzz targets: %w", err)
		}
		for _, declared := range parsed.Decls {
			if function, ok := declared.(*ast.FuncDecl); ok && isFuzz(function) {
				targets = append(targets, fuzzTarget{filepath.ToSlash(filepath.Dir(file)), function.Name.Name})
			}
		}
	}
	return targets, nil
}

// isFuzz tells whether the function is one that go test -fuzz runs: a plain
// function FuzzX with the one parameter *testing.F. Fuzzy is none: go wants no
// small letter behind the word.
func isFuzz(function *ast.FuncDecl) bool {
	rest, named := strings.CutPrefix(function.Name.Name, "Fuzz")
	if first, _ := utf8.DecodeRuneInString(rest); !named || unicode.IsLower(first) {
		return false
	}
	if function.Recv != nil || function.Type.Params.NumFields() != 1 {
		return false
	}
	pointer, ok := function.Type.Params.List[0].Type.(*ast.StarExpr)
	if !ok {
		return false
	}
	selector, ok := pointer.X.(*ast.SelectorExpr)
	return ok && selector.Sel.Name == "F"
}
