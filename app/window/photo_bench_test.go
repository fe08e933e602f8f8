package window

import (
	"bytes"
	"context"
	"image"
	"image/jpeg"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"gussetwright/app/export"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// largePhoto is a JPEG of 8268 × 5669 pixels, 47 million: 700 × 480 mm at 300 pixels to
// the inch.
func largePhoto(b *testing.B) []byte {
	b.Helper()
	picture := image.NewYCbCr(image.Rect(0, 0, 8268, 5669), image.YCbCrSubsampleRatio420)
	for i := range picture.Y {
		x, y := i%picture.YStride, i/picture.YStride
		picture.Y[i] = uint8(128 + 100*math.Sin(float64(x)/97)*math.Cos(float64(y)/61) + float64((x*7919+y*104729)%13))
	}
	for i := range picture.Cb {
		picture.Cb[i], picture.Cr[i] = uint8(i/5000), uint8(i/7000)
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, picture, &jpeg.Options{Quality: 92}); err != nil {
		b.Fatal(err)
	}
	return out.Bytes()
}

// withPhoto puts the photo onto the whole blank of the worked example and waits until
// it is opened and both panes show it. It returns how long that took.
func (w *Window) withPhoto(later chan func(), data []byte) time.Duration {
	spec := geomtest.WorkedExample()
	w.doc.Set(spec)
	w.drawn()
	start := time.Now()
	spec.Artwork = []bag.Artwork{bag.NewArtwork(w.doc.PutFile("photo.jpg", data), bag.OnBlank)}
	w.doc.Set(spec)
	for w.doc.State().Snapshot.Opening() {
		(<-later)()
	}
	w.drawn()
	return time.Since(start)
}

// BenchmarkPhotoImport is a large photo from bytes to both panes.
func BenchmarkPhotoImport(b *testing.B) {
	data := largePhoto(b)
	var took times
	for b.Loop() {
		b.StopTimer()
		w, later := benchWindow(b)
		b.StartTimer()
		took = append(took, w.withPhoto(later, bytes.Clone(data)))
	}
	took.report(b, "")
	b.ReportMetric(float64(len(data))/1e6, "MB")
}

// BenchmarkPhotoDrag is one step of a drag with a large photo on the bag.
func BenchmarkPhotoDrag(b *testing.B) {
	w, later := benchWindow(b)
	w.withPhoto(later, largePhoto(b))
	spec := w.doc.State().Spec
	var took times
	for i := 1; b.Loop(); i++ {
		start := time.Now()
		w.doc.Drag(another(spec, i))
		w.drawn()
		took = append(took, time.Since(start))
	}
	took.report(b, "")
}

// BenchmarkPhotoProduction writes the production file of a bag with a large photo, and
// beside it copies the same photo into a file of its own, as a measure of the disk.
func BenchmarkPhotoProduction(b *testing.B) {
	data := largePhoto(b)
	w, later := benchWindow(b)
	w.withPhoto(later, data)
	snapshot := w.doc.State().Snapshot
	kinds, err := export.Choose("dieline")
	if err != nil {
		b.Fatal(err)
	}
	b.Run("file", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			job := export.Job{Folder: b.TempDir(), Project: "photo", Snapshot: snapshot, Date: time.Now(), Kinds: kinds}
			if _, err := export.Write(context.Background(), job, func(float64, string) {}); err != nil {
				b.Fatal(err)
			}
		}
		var memory runtime.MemStats
		runtime.ReadMemStats(&memory)
		b.ReportMetric(float64(memory.HeapInuse)/1e6, "heap-MB")
	})
	b.Run("qpdf-copy", func(b *testing.B) {
		folder := b.TempDir()
		job := export.Job{Folder: folder, Project: "photo", Snapshot: snapshot, Date: time.Now(), Kinds: kinds}
		paths, err := export.Write(context.Background(), job, func(float64, string) {})
		if err != nil {
			b.Fatal(err)
		}
		for b.Loop() {
			geomtest.Run(b, "qpdf", paths[0], filepath.Join(folder, "copy.pdf"))
		}
	})
	b.Run("plain-copy", func(b *testing.B) {
		for b.Loop() {
			file, err := os.CreateTemp(b.TempDir(), "photo")
			if err != nil {
				b.Fatal(err)
			}
			if _, err := io.Copy(file, bytes.NewReader(data)); err != nil {
				b.Fatal(err)
			}
			if err := file.Sync(); err != nil {
				b.Fatal(err)
			}
			file.Close()
		}
	})
}
