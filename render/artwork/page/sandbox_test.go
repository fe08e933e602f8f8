package page

import (
	"context"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/klippa-app/go-pdfium"
)

func useless(pdfium.Pdfium) error { return nil }

// What was compiled is kept in the folder, which is made for the user alone, and used
// from there.
func TestCompiledIsKept(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "compiled")
	for range 2 {
		pool, err := compile(folder)
		if err != nil {
			t.Fatal(err)
		}
		if err := pool.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if entries, err := os.ReadDir(folder); err != nil || len(entries) == 0 {
		t.Errorf("%d entries in the folder (%v)", len(entries), err)
	}
	if info, err := os.Stat(folder); runtime.GOOS != "windows" && (err != nil || info.Mode().Perm() != 0o700) {
		t.Errorf("folder %v (%v)", info, err)
	}
}

// A folder that cannot be written to is no obstacle.
func TestCompiledNowhere(t *testing.T) {
	obstacle := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(obstacle, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	pool, err := compile(filepath.Join(obstacle, "folder"))
	if err != nil {
		t.Fatal(err)
	}
	pool.Close()
}

// BenchmarkColdStart compiles PDFium.
func BenchmarkColdStart(b *testing.B) { benchmarkStart(b, "") }

// BenchmarkWarmStart takes it from the folder where an earlier start left it.
func BenchmarkWarmStart(b *testing.B) {
	folder := b.TempDir()
	if _, err := compile(folder); err != nil {
		b.Fatal(err)
	}
	benchmarkStart(b, folder)
}

func benchmarkStart(b *testing.B, folder string) {
	for b.Loop() {
		pool, err := compile(folder)
		if err != nil {
			b.Fatal(err)
		}
		pool.Close()
	}
}

// BenchmarkInstance makes a fresh PDFium and throws it away, as every call does.
func BenchmarkInstance(b *testing.B) {
	for b.Loop() {
		if err := shared.run(context.Background(), readTime, useless); err != nil {
			b.Fatal(err)
		}
	}
}
