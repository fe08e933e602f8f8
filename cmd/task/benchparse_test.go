package main

import (
	"maps"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

func TestReadResults(t *testing.T) {
	for _, test := range []struct {
		name, output string
		want         results
	}{
		{"nothing", "", results{}},
		{"time and memory", "goos: linux\nBenchmarkLay \t 100\t  6012 ns/op\t 2048 B/op\t 56 allocs/op\nPASS\nok  \tm\t1s\n", results{"Lay": {"ns/op": 6012, "B/op": 2048, "allocs/op": 56}}},
		{"metrics of its own", "BenchmarkDrag \t 7\t 1.5e+07 ns/op\t 12.9 p95-ms\t 0.5 ×pdftoppm\n", results{"Drag": {"ns/op": 15e6, "p95-ms": 12.9, "×pdftoppm": 0.5}}},
		{"below another", "BenchmarkSolve/240x100x360 \t 1\t 9 ns/op\nBenchmarkDraw/image-draw \t 1\t 7 ns/op\n", results{"Solve/240x100x360": {"ns/op": 9}, "Draw/image-draw": {"ns/op": 7}}},
		{"the later counts", "BenchmarkLay 1 9 ns/op\nBenchmarkLay 1 8 ns/op\n", results{"Lay": {"ns/op": 8}}},
		{"a name alone", "BenchmarkLay\n    lay_test.go:3: said\n", results{}},
		{"words of the program", "BenchmarkLay went very well\nBenchmarkLay 3 fast ns/op\nBenchmarkLay 3 1 ns/op 4\n", results{}},
		{"a failure", "--- FAIL: BenchmarkLay\n    lay_test.go:9: wrong\nFAIL\n", results{}},
	} {
		if got := readResults(test.output); !maps.EqualFunc(got, test.want, maps.Equal) {
			t.Errorf("%s: got %v, want %v", test.name, got, test.want)
		}
	}
}

// The go command itself must print what is read.
func TestReadResultsOfTheGoCommand(t *testing.T) {
	root := t.TempDir()
	writeFile(t, filepath.Join(root, "go.mod"), "module m\n\ngo 1.24\n")
	writeFile(t, filepath.Join(root, "m_test.go"), `package m

import "testing"

func BenchmarkOther(b *testing.B) { b.Fatal("not asked for") }

func BenchmarkDraw(b *testing.B) {
	b.Run("in-2", func(b *testing.B) {
		for b.Loop() {
		}
		b.ReportMetric(12.25, "p95-ms")
	})
}
`)
	words := benchCommand("", []row{{from: of(" Draw/*", times)}}).words
	words[len(words)-1] = "."
	run := exec.Command(words[0], words[1:]...)
	run.Dir = root
	run.Env = append(run.Environ(), append(withoutCgo, "GOFLAGS=-vet=off")...)
	output, err := run.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, output)
	}
	got := readResults(string(output))["Draw/in-2"]
	if _, timed := got[times]; got["p95-ms"] != 12.25 || !timed {
		t.Errorf("got %v of\n%s", got, output)
	}
	if strings.Contains(string(output), "not asked for") {
		t.Errorf("all benchmarks ran:\n%s", output)
	}
}

func TestWorstOfMany(t *testing.T) {
	found := results{}
	found.add("fold", results{"Pose/a": {"ns/op": 3}, "Pose/b": {"ns/op": 7, "mm": -1}, "Pose": {"ns/op": 90}, "Poser/a": {"ns/op": 80}})
	found.add("other", results{"Pose/a": {"ns/op": 50}})
	for _, test := range []struct {
		where, metric string
		want          float64
		found         bool
	}{
		{"fold Pose/*", "ns/op", 7, true},
		{"fold Pose/a", "ns/op", 3, true},
		{"fold Pose", "ns/op", 90, true},
		{"fold Pose/*", "mm", -1, true},
		{"fold Pose/*", "MB", 0, false},
		{"fold Lay/*", "ns/op", 0, false},
	} {
		if got, has := found.worst(of(test.where, test.metric)); got != test.want || has != test.found {
			t.Errorf("%s %s: got %g, %v, want %g, %v", test.where, test.metric, got, has, test.want, test.found)
		}
	}
}
