package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"gussetwright/app/project"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// photoProject writes a project whose blank is covered by a JPEG of 8268 × 5669 pixels,
// 47 million: 700 × 480 mm at 300 pixels to the inch.
func photoProject(b *testing.B) string {
	b.Helper()
	random := rand.New(rand.NewPCG(47, 300))
	picture := image.NewYCbCr(image.Rect(0, 0, 8268, 5669), image.YCbCrSubsampleRatio420)
	for i := range picture.Y {
		picture.Y[i] = uint8(i/40000) + uint8(random.IntN(20))
	}
	var data bytes.Buffer
	if err := jpeg.Encode(&data, picture, &jpeg.Options{Quality: 90}); err != nil {
		b.Fatal(err)
	}
	spec := geomtest.WorkedExample()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("photo.jpg", bag.OnBlank)}
	path := filepath.Join(b.TempDir(), "photo.gusset")
	if err := project.Save(path, project.Project{Spec: spec, Files: map[string][]byte{"photo.jpg": data.Bytes()}}); err != nil {
		b.Fatal(err)
	}
	return path
}

// exitFindings is the code of gwbatch for a bag with findings, here of ink where glue
// goes; the files are written all the same. With qpdf it means nothing.
const exitFindings = 1

// peakOf runs a program and returns the most memory that it held, in bytes. The kernel
// keeps that figure (VmHWM in proc_pid_status(5)) while the program runs; it is looked at
// so often that little can be missed. What wait4 tells of a child will not do: it counts
// the memory of the parent from which the child was forked.
func peakOf(b *testing.B, name string, args ...string) float64 {
	b.Helper()
	program := exec.Command(geomtest.Tool(b, name), args...)
	var said bytes.Buffer
	program.Stderr = &said
	if err := program.Start(); err != nil {
		b.Fatal(err)
	}
	ended, cancel := context.WithCancel(context.Background())
	peak := make(chan float64)
	go func() { peak <- watchPeak(ended, program.Process.Pid) }()
	err := program.Wait()
	cancel()
	most := <-peak
	var failed *exec.ExitError
	if err != nil && !(errors.As(err, &failed) && failed.ExitCode() == exitFindings) {
		b.Fatalf("%s %q: %v\n%s", name, args, err, &said)
	}
	return most
}

// watchPeak looks at the peak of a process until it ended.
func watchPeak(ended context.Context, pid int) float64 {
	path, most := fmt.Sprintf("/proc/%d/status", pid), 0.0
	for ended.Err() == nil {
		status, _ := os.ReadFile(path) // one that is ending has none
		for line := range strings.Lines(string(status)) {
			if fields := strings.Fields(line); len(fields) > 1 && fields[0] == "VmHWM:" {
				kilobytes, _ := strconv.ParseFloat(fields[1], 64) // the kernel writes numbers
				most = max(most, kilobytes*1024)
			}
		}
		time.Sleep(2 * time.Millisecond)
	}
	return most
}

// BenchmarkPhoto writes the production file of a bag with a large photo, from start to
// end of the process, and beside it has qpdf copy that file. Both report the most memory
// that they held.
func BenchmarkPhoto(b *testing.B) {
	program, _ := build(b)
	path, folder := photoProject(b), b.TempDir()
	b.Run("gwbatch", func(b *testing.B) {
		most := 0.0
		for b.Loop() {
			most = max(most, peakOf(b, program, "export", "--only", "dieline", "--to", folder, path))
		}
		b.ReportMetric(most/1e6, "peak-MB")
	})
	b.Run("qpdf-copy", func(b *testing.B) {
		written, most := filepath.Join(folder, "photo-dieline.pdf"), 0.0
		for b.Loop() {
			most = max(most, peakOf(b, "qpdf", written, filepath.Join(folder, "copy.pdf")))
		}
		b.ReportMetric(most/1e6, "peak-MB")
	})
}
