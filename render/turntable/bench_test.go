package turntable_test

import (
	"io"
	"testing"

	"gussetwright/render/turntable"
)

func BenchmarkWrite(b *testing.B) {
	p := demo(b).page
	b.ReportAllocs()
	for b.Loop() {
		if err := turntable.Write(io.Discard, p); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkWritePlain leaves the artwork out: what is left is the mesh and the page.
func BenchmarkWritePlain(b *testing.B) {
	p := demo(b).page
	p.Textures, p.Still = nil, nil
	b.ReportAllocs()
	for b.Loop() {
		if err := turntable.Write(io.Discard, p); err != nil {
			b.Fatal(err)
		}
	}
}
