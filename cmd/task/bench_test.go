package main

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// benchmarksIn returns the names of the benchmarks in a folder of the module.
func benchmarksIn(t *testing.T, folder string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(geomtest.Root(t), filepath.FromSlash(folder), "*_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, file := range files {
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		for _, declared := range parsed.Decls {
			if function, ok := declared.(*ast.FuncDecl); ok && function.Recv == nil {
				if name, found := strings.CutPrefix(function.Name.Name, "Benchmark"); found {
					names = append(names, name)
				}
			}
		}
	}
	return names
}

// A benchmark that is renamed must not drop out of the table unseen.
func TestRowsNameBenchmarksThatExist(t *testing.T) {
	known := map[string][]string{windowFolder: {"Window", "Bare"}}
	for _, r := range benchRows() {
		for _, o := range r.origins() {
			if o.folder == "" {
				if !strings.HasPrefix(o.metric, "go run ./cmd/task ") {
					t.Errorf("%s: %q is no command", r.what, o.metric)
				}
				continue
			}
			if known[o.folder] == nil {
				known[o.folder] = benchmarksIn(t, o.folder)
			}
			if name, _, _ := strings.Cut(o.benchmark, "/"); !slices.Contains(known[o.folder], name) {
				t.Errorf("%s: %s has no Benchmark%s, only %q", r.what, o.folder, name, known[o.folder])
			}
			if o.metric == "" {
				t.Errorf("%s: no metric of %v", r.what, o)
			}
		}
		if r.aim.judged && r.aim.words == "" {
			t.Errorf("%s: the aim is not said", r.what)
		}
	}
}

// planned returns a bench of three rows, of a machine that runs nothing.
func planned(t *testing.T) (*bench, *pretended) {
	p := pretend(t, "linux", true)
	b := &bench{m: p.machine, rows: []row{
		{group: "sheets", what: "one sheet", from: of("sheet Lay", times), aim: under("under 1 ms", 1e6)},
		{group: "sheets", what: "many sheets", from: of("sheet Rank/*", times), aim: under("under 1 ms", 1e6), beside: []peer{{"another", of("sheet Other", times)}}},
		{group: "window", what: "start", from: of(windowFolder+" Window", "frame-ms"), aim: under("under 1 s", 1000)},
		{group: "window", what: "soak", from: origin{metric: "go run ./cmd/task soak"}},
	}}
	b.run = func(c command) (string, error) {
		return "BenchmarkLay \t 10 \t 900 ns/op\nBenchmarkRank/a \t 10 \t 5 ns/op\nBenchmarkRank/b \t 9 \t 2000000 ns/op\nBenchmarkOther \t 9 \t 4000000 ns/op\nok\n", p.note(c)
	}
	b.watch = func(*machine) (results, error) {
		p.ran = append(p.ran, "watch")
		return results{"Window": {"frame-ms": 400}}, nil
	}
	return b, p
}

func TestBenchMeasuresOneFolderAfterAnother(t *testing.T) {
	b, p := planned(t)
	if err := b.measure(); err != nil {
		t.Fatal(err)
	}
	want := []string{
		"CGO_ENABLED=0 go env GOVERSION",
		"CGO_ENABLED=0 go test -run '^$' -bench '^Benchmark(Lay|Rank|Other)$' -benchmem -cpu 1 -benchtime 2s -timeout 30m0s ./sheet",
		"watch",
	}
	if !slices.Equal(p.ran, want) {
		t.Errorf("ran %q, want %q", p.ran, want)
	}
	for _, words := range []string{"Measured on ", "900 ns", "2 ms    under 1 ms  NOT MET", "another: 4 ms (2 × ours)", "400 ms", "Aims met: 2, not met: 1; figures not measured: 0."} {
		if !strings.Contains(p.out.String(), words) {
			t.Errorf("printed %s\nwant %q in it", &p.out, words)
		}
	}
	for _, words := range []string{" 1 of 2  sheet\n", " 2 of 2  " + windowFolder + "\n"} {
		if !strings.Contains(p.errors.String(), words) {
			t.Errorf("progress %s\nwant %q in it", &p.errors, words)
		}
	}
}

// What breaks is said, and does not keep the rest from the table.
func TestBenchThatBreaks(t *testing.T) {
	b, p := planned(t)
	b.run = func(command) (string, error) {
		return "BenchmarkLay \t 10 \t 900 ns/op\n--- FAIL: BenchmarkRank\n    broken\n", errPretended
	}
	if err := b.measure(); !errors.Is(err, errPretended) {
		t.Errorf("got %v", err)
	}
	for _, words := range []string{"900 ns", "another: not measured", "400 ms", "figures not measured: 1."} {
		if !strings.Contains(p.out.String(), words) {
			t.Errorf("printed %s\nwant %q in it", &p.out, words)
		}
	}
	if !strings.Contains(p.errors.String(), "    broken\n") {
		t.Errorf("the output of the benchmark is kept back: %s", &p.errors)
	}
}

func TestBenchSaysWhatWasSkipped(t *testing.T) {
	b, p := planned(t)
	b.run = func(command) (string, error) {
		return "--- SKIP: BenchmarkRank\n    qpdf is not installed\nok\n", nil
	}
	if err := b.measure(); err != nil || !strings.Contains(p.errors.String(), "qpdf is not installed") {
		t.Errorf("%v, said %s", err, &p.errors)
	}
}

func TestBenchInMarkdown(t *testing.T) {
	b, p := planned(t)
	b.markdown = true
	if err := b.measure(); err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		"| what | figure | aim |  | beside it | benchmark |\n|---|---|---|---|---|---|\n",
		"| sheets: one sheet | 900 ns | under 1 ms | met |  | `sheet Lay` |\n",
		"| sheets: many sheets | 2 ms | under 1 ms | **not met** | another: 4 ms (2 × ours) | `sheet Rank/*` |\n",
		"| window: soak | – |  | measured by that command |  | `go run ./cmd/task soak` |\n",
	} {
		if !strings.Contains(p.out.String(), line) {
			t.Errorf("printed %s\nwant %q in it", &p.out, line)
		}
	}
}

func TestBenchOptions(t *testing.T) {
	for _, test := range []struct {
		args     []string
		folders  []string
		complain string
	}{
		{args: []string{"-only", "FOLD POSE"}, folders: []string{"geometry/fold"}},
		{args: []string{"-only", "^files:"}, folders: []string{"app/export", "cmd/gwbatch"}},
		{args: []string{"-only", "("}, complain: "-only (: error parsing regexp"},
		{args: []string{"-only", "nothing like this"}, complain: "no row of the table is like that"},
		{args: []string{"-nope"}, complain: "flag provided but not defined"},
	} {
		var b bench
		err := b.read(test.args)
		var usage usageError
		if test.complain != "" {
			if !errors.As(err, &usage) || !strings.Contains(err.Error(), test.complain) {
				t.Errorf("%q: got %v, want %q", test.args, err, test.complain)
			}
			continue
		}
		if got := benchFolders(b.rows); err != nil || !slices.Equal(got, test.folders) {
			t.Errorf("%q: %v, folders %q, want %q", test.args, err, got, test.folders)
		}
	}
	var b bench
	if err := b.read(nil); err != nil || len(b.rows) != len(benchRows()) || b.markdown {
		t.Errorf("no options: %v, %d rows", err, len(b.rows))
	}
}

// The window is left out where it cannot be started, and that is said.
func TestBenchWithoutAWindow(t *testing.T) {
	for _, system := range []string{"windows", "linux"} {
		p := pretend(t, system, true)
		got, err := watchWindows(p.machine)
		if err != nil || len(got) > 0 || len(p.ran) > 0 || !strings.Contains(p.errors.String(), "the window is not started; that needs Linux and a C compiler") {
			t.Errorf("%s: %v, %v, ran %q, said %q", system, got, err, p.ran, &p.errors)
		}
	}
}
