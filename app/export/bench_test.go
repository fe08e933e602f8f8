package export_test

import (
	"bytes"
	"context"
	"os"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/project"
	"gussetwright/assets"
)

// demoWithArtwork is the demo bag with its artwork opened.
func demoWithArtwork(b *testing.B) *document.Snapshot {
	b.Helper()
	opened, err := project.ReadFrom(bytes.NewReader(assets.Demo))
	if err != nil {
		b.Fatal(err)
	}
	snapshot, err := document.DeriveWithArt(context.Background(), opened.Spec, opened.Files)
	if err != nil {
		b.Fatal(err)
	}
	return snapshot
}

// writeOften writes the files of one kind over and over, and returns the last.
func writeOften(b *testing.B, kind string) []string {
	b.Helper()
	kinds, err := export.Choose(kind)
	if err != nil {
		b.Fatal(err)
	}
	job := export.Job{Folder: b.TempDir(), Project: "bag", Snapshot: demoWithArtwork(b), Date: day, Kinds: kinds}
	var paths []string
	b.ReportAllocs()
	for b.Loop() {
		if paths, err = export.Write(context.Background(), job, func(float64, string) {}); err != nil {
			b.Fatal(err)
		}
	}
	return paths
}

// BenchmarkProduction writes the production file of the demo bag with its artwork.
func BenchmarkProduction(b *testing.B) { writeOften(b, "dieline") }

// BenchmarkClientPage writes the page in which a client turns the demo bag, and reports
// its size.
func BenchmarkClientPage(b *testing.B) {
	size := 0.0
	for _, path := range writeOften(b, "page") {
		info, err := os.Stat(path)
		if err != nil {
			b.Fatal(err)
		}
		size += float64(info.Size())
	}
	b.ReportMetric(size/1e6, "file-MB")
}
