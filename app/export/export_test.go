package export_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/project"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
)

func float(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

func read(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func demo(t testing.TB) *document.Snapshot {
	t.Helper()
	opened, err := project.ReadFrom(strings.NewReader(string(assets.Demo)))
	if err != nil {
		t.Fatal(err)
	}
	snapshot, err := document.Derive(opened.Spec)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

var day = time.Date(2026, time.March, 31, 0, 0, 0, 0, time.UTC)

// The demo project shows the program at its best: two bags from a sheet, and
// nothing to complain about.
func TestDemoIsAGoodExample(t *testing.T) {
	snapshot := demo(t)
	if snapshot.Plan.BagsPerSheet() != 2 {
		t.Errorf("%g bags a sheet, want 2", snapshot.Plan.BagsPerSheet())
	}
	for _, finding := range snapshot.Findings {
		if finding.Severity != "note" {
			t.Errorf("%s %s: %s", finding.Severity, finding.Code, finding.Message)
		}
	}
}

func TestCancelWritesNothing(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	folder := filepath.Join(t.TempDir(), "out")
	stopAtSecond := func(share float64, _ string) {
		if share > 0 {
			cancel()
		}
	}
	_, err := export.Write(ctx, export.Job{Folder: folder, Project: "bag", Snapshot: demo(t), Date: day, Kinds: export.Kinds()}, stopAtSecond)
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want that of a cancelled context", err)
	}
	if _, err := os.Stat(folder); err == nil {
		t.Error("the folder was made")
	}
}

// The last file is under way when the user cancels.
func TestCancelDuringTheLastKindWritesNothing(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	folder := filepath.Join(t.TempDir(), "out")
	kinds := export.Kinds()
	stopAtLast := func(_ float64, kind string) {
		if kind == kinds[len(kinds)-1].Name {
			cancel()
		}
	}
	_, err := export.Write(ctx, export.Job{Folder: folder, Project: "bag", Snapshot: demo(t), Date: day, Kinds: kinds}, stopAtLast)
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want that of a cancelled context", err)
	}
	if _, err := os.Stat(folder); err == nil {
		t.Error("the folder was made")
	}
}

func TestFilesAreThoseThatAreWritten(t *testing.T) {
	inOnePiece, inTwo := demo(t).Spec, demo(t).Spec
	inOnePiece.Body.Seams, inTwo.Body.Seams = bag.SeamsOne, bag.SeamsTwo
	for _, spec := range []bag.Spec{inOnePiece, inTwo} {
		snapshot, err := document.Derive(spec)
		if err != nil {
			t.Fatal(err)
		}
		folder := t.TempDir()
		written, err := export.Write(context.Background(), export.Job{Folder: folder, Project: "tea: house", Snapshot: snapshot, Date: day, Kinds: export.Kinds()}, func(float64, string) {})
		if err != nil {
			t.Fatal(err)
		}
		var want []string
		for _, kind := range export.Kinds() {
			for _, name := range kind.Files("tea: house", snapshot) {
				want = append(want, filepath.Join(folder, name))
			}
		}
		if !slices.Equal(written, want) {
			t.Errorf("%s seams: written %q, announced %q", spec.Body.Seams, written, want)
		}
	}
}

func TestFailureNamesTheFile(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	_, err := export.Write(context.Background(), export.Job{Folder: blocked, Project: "bag", Snapshot: demo(t), Date: day, Kinds: export.Kinds()}, func(float64, string) {})
	if err == nil || !strings.Contains(err.Error(), blocked) {
		t.Errorf("error %v, want one that names %s", err, blocked)
	}
}

func TestFileName(t *testing.T) {
	for name, want := range map[string]string{
		"Tea house": "Tea house", "a/b\\c:d": "a-b-c-d", "": "bag", " .. ": "bag", "Тёа": "Тёа", "x\ny": "x-y",
	} {
		if got := export.FileName(name); got != want {
			t.Errorf("%q becomes %q, want %q", name, got, want)
		}
	}
}

func TestPreviewIsSmall(t *testing.T) {
	picture, err := export.Preview(demo(t))
	if err != nil {
		t.Fatal(err)
	}
	if len(picture) == 0 || len(picture) > 200_000 {
		t.Errorf("the preview takes %d bytes", len(picture))
	}
}

// BenchmarkDieline is the dieline PDF of the demo bag, from its spec to the file.
func BenchmarkDieline(b *testing.B) {
	spec := demo(b).Spec
	kinds, err := export.Choose("dieline")
	if err != nil {
		b.Fatal(err)
	}
	folder := b.TempDir()
	b.ReportAllocs()
	for b.Loop() {
		snapshot, err := document.Derive(spec)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := export.Write(context.Background(), export.Job{Folder: folder, Project: "bag", Snapshot: snapshot, Date: day, Kinds: kinds}, func(float64, string) {}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkEveryFile is a whole export.
func BenchmarkEveryFile(b *testing.B) {
	snapshot := demo(b)
	folder := b.TempDir()
	for b.Loop() {
		if _, err := export.Write(context.Background(), export.Job{Folder: folder, Project: "bag", Snapshot: snapshot, Date: day, Kinds: export.Kinds()}, func(float64, string) {}); err != nil {
			b.Fatal(err)
		}
	}
}
