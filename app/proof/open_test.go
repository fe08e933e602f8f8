package proof

import (
	"bytes"
	"context"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gussetwright/app/plain"
	"gussetwright/app/project"
	"gussetwright/assets"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/phrase"
)

// codesIn returns the codes of the findings that a package makes with the method find,
// by the names of the severities that they may have; "" for one that is reckoned.
func codesIn(t *testing.T, folder string) map[string][]string {
	t.Helper()
	files := token.NewFileSet()
	paths, err := filepath.Glob(filepath.Join(geomtest.Root(t), folder, "*.go"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no files in %s: %v", folder, err)
	}
	codes := map[string][]string{}
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(parsed, func(node ast.Node) bool {
			call, is := node.(*ast.CallExpr)
			if !is || len(call.Args) < 2 {
				return true
			}
			if method, is := call.Fun.(*ast.SelectorExpr); !is || method.Sel.Name != "find" {
				return true
			}
			if literal, is := call.Args[1].(*ast.BasicLit); is {
				code, _ := strconv.Unquote(literal.Value)
				codes[code] = append(codes[code], severityIn(call.Args[0]))
			}
			return true
		})
	}
	return codes
}

func severityIn(expression ast.Expr) string {
	name := ""
	switch e := expression.(type) {
	case *ast.Ident:
		name = e.Name
	case *ast.SelectorExpr:
		name = e.Sel.Name
	}
	if slices.Contains([]string{"Error", "Warning", "Note"}, name) {
		return name
	}
	return ""
}

// Every finding that the proof tells has a sentence of its own, so that none reaches a
// client as a mere remark. What is reckoned may be an error, a warning or a note.
func TestEveryFindingHasItsMeaning(t *testing.T) {
	found := 0
	for _, folder := range []string{"geometry/check", "render/artcheck"} {
		for code, severities := range codesIn(t, folder) {
			found++
			_, stop := plain.Stops()[code]
			_, risk := plain.Risks()[code]
			for _, severity := range severities {
				if severity == "Error" && !stop || severity == "Warning" && !risk || severity == "" && !stop && !risk {
					t.Errorf("%s, %q, has no plain words", code, severity)
				}
			}
		}
	}
	if found < 40 {
		t.Errorf("only %d codes found", found)
	}
}

// Sentences for clients end as such and hold neither numbers nor words of the trade.
func TestMeaningsArePlain(t *testing.T) {
	trade := regexp.MustCompile(`(?i)[0-9]|\bblank|bleed|gripper|gusset|flap\b|crease|\bRGB\b|\bgrain\b|turn-in|\bpatch\b|\bink\b|resolution|pixel|outline|font`)
	for _, table := range []map[string]phrase.Word{plain.Stops(), plain.Risks()} {
		for code, says := range table {
			if word := trade.FindString(string(says)); word != "" || !strings.HasSuffix(string(says), ".") {
				t.Errorf("%s: %q holds %q", code, says, word)
			}
		}
	}
}

// Findings of one meaning are one point that names the sides of the bag, errors come
// first, and notes are none.
func TestOpenPoints(t *testing.T) {
	p := proofOf(t, nil)
	snapshot := *p.Snapshot
	on := func(panel string, severity check.Severity, code string) check.Finding {
		found, _ := snapshot.Blank.Pieces[0].Panel(panel)
		return check.Finding{Severity: severity, Code: code, At: found.Box.Center(), Message: phrase.New("the blank of %g mm", 1839.5)}
	}
	snapshot.Findings = []check.Finding{
		on("front", check.Error, "no-sheet-fits"), on("front", check.Error, "of a later day"),
		on("front", check.Warning, "mark-near-edge"), on("back", check.Warning, "mark-near-edge"), on("back", check.Warning, "mark-near-edge"),
		on("gusset-left", check.Warning, "artwork-soft"), on("gusset-right", check.Warning, "artwork-soft"),
		on("front-base", check.Warning, "mark-near-hole"), on("front", check.Warning, "grain-across"),
		on("front", check.Warning, "of a later day"), on("front", check.Note, "cord-loop"),
	}
	p.Snapshot = &snapshot
	mustChange, mayChange := p.open()
	if want := []string{"This size needs a larger sheet of paper.", "This bag cannot be made as it is."}; !slices.Equal(mustChange, want) {
		t.Errorf("must change %q, want %q", mustChange, want)
	}
	if want := []string{
		"Front, Back: Text or a part of a picture comes close to an edge and may be cut or folded there.",
		"Side: One of the pictures may look a little blurred in print.",
		"Text or a part of a picture comes close to the handle.",
		"The folds along the bag may crack or look wavy.",
		"One more point of the making is to be settled with the maker of the bag.",
	}; !slices.Equal(mayChange, want) {
		t.Errorf("may change %q, want %q", mayChange, want)
	}
	if got := OpenPoints(&snapshot); got != len(mustChange)+len(mayChange) {
		t.Errorf("%d points are open, want %d", got, len(mustChange)+len(mayChange))
	}
}

// A proof that is asked for right after a change knows what only a look at the artwork
// tells, as one does that is asked for later: here that the lettering of the demo comes
// close to an edge.
func TestProofOfABagThatNobodyLookedAt(t *testing.T) {
	demo, err := project.Read(bytes.NewReader(assets.Demo), int64(len(assets.Demo)))
	if err != nil {
		t.Fatal(err)
	}
	spec := demo.Spec
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = 230, 100, 200
	later := derive(t, spec, demo.Files)
	atOnce, err := derive(t, demo.Spec, demo.Files).Member(spec)
	if err != nil {
		t.Fatal(err)
	}
	if atOnce.Looked() || len(pointsOf(atOnce)) == len(pointsOf(later)) {
		t.Fatal("a look tells nothing, and proves nothing")
	}
	if got, want := OpenPoints(atOnce), len(pointsOf(later)); got != want {
		t.Errorf("%d points are open, want %d", got, want)
	}
	text := read(t, inFile(t, "proof.pdf", written(t, New(context.Background(), Order{Snapshot: atOnce, Date: day}))))
	if want := fmt.Sprintf("Still open, as listed in this proof: %d", len(pointsOf(later))); !strings.Contains(text, want) {
		t.Errorf("the proof lacks %q: %s", want, text)
	}
}

// A finding about a place off every panel is about no side.
func TestPointOffThePanels(t *testing.T) {
	p := proofOf(t, nil)
	finding := check.Finding{Severity: check.Warning, Code: "mark-near-edge"}
	finding.At.X = -100
	if side := sideOf(p.Snapshot, finding); side != "" {
		t.Errorf("it is about %q", side)
	}
}
