package artcheck_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"testing"

	"gussetwright/geometry/check"
)

// plainPDF returns a page of 246 × 366 mm with text in a font that is not embedded.
func plainPDF(points float64) []byte {
	content := fmt.Sprintf("BT /F1 %g Tf 200 500 Td (Quillmoor) Tj ET", points)
	objects := []string{
		"<< /Type /Catalog /Pages 2 0 R >>",
		"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
		"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 697.32 1037.48] /Contents 4 0 R /Resources << /Font << /F1 5 0 R >> >> >>",
		fmt.Sprintf("<< /Length %d >>\nstream\n%s\nendstream", len(content), content),
		"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>",
	}
	var file bytes.Buffer
	file.WriteString("%PDF-1.6\n")
	places := []int{}
	for i, o := range objects {
		places = append(places, file.Len())
		fmt.Fprintf(&file, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	table := file.Len()
	fmt.Fprintf(&file, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, place := range places {
		fmt.Fprintf(&file, "%010d 00000 n \n", place)
	}
	fmt.Fprintf(&file, "trailer\n<< /Size %d /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, table)
	return file.Bytes()
}

// inkedTIFF returns a CMYK picture of 2906 × 16 pixels, uncompressed (TIFF 6.0: the
// tags of a baseline file, with the photometric interpretation Separated, 5): its
// right half has the given ink in each channel, of 255.
func inkedTIFF(ink byte) []byte {
	const width, height, start = 2906, 16, 8
	var out bytes.Buffer
	put := func(values ...any) {
		for _, v := range values {
			binary.Write(&out, binary.LittleEndian, v) // a buffer takes everything
		}
	}
	put([]byte("II"), uint16(42), uint32(start+4*width*height+8))
	for range height {
		for x := range width {
			v := byte(20)
			if x >= width/2 {
				v = ink
			}
			out.Write([]byte{v, v, v, v})
		}
	}
	put([4]uint16{8, 8, 8, 8}, uint16(9))
	for _, tag := range [][4]uint32{
		{256, 4, 1, width},
		{257, 4, 1, height},
		{258, 3, 4, start + 4*width*height},
		{259, 3, 1, 1},
		{262, 3, 1, 5},
		{273, 4, 1, start},
		{277, 3, 1, 4},
		{278, 4, 1, height},
		{279, 4, 1, 4 * width * height},
	} {
		put(uint16(tag[0]), uint16(tag[1]), tag[2], tag[3])
	}
	put(uint32(0))
	return out.Bytes()
}

func TestFindingsInDocuments(t *testing.T) {
	for _, c := range []struct {
		code     string
		severity check.Severity
		data     []byte
		want     bool
	}{
		{"font-missing", check.Error, plainPDF(12), true},
		{"text-small", check.Warning, plainPDF(4), true},
		{"text-small", check.Warning, plainPDF(12), false},
		// 4 × 229 ÷ 255 = 359 %; coated paper takes 300.
		{"ink-heavy", check.Warning, inkedTIFF(229), true},
		{"ink-heavy", check.Warning, inkedTIFF(180), false},
	} {
		findings, b := bagWith(t, c.data, on("front", nil), nil)
		got := false
		for _, f := range findings {
			if f.Code != c.code {
				continue
			}
			got = true
			if f.Severity != c.severity {
				t.Errorf("%s is a %s", c.code, f.Severity)
			}
			if front, _ := b.Pieces[0].Panel("front"); c.code == "ink-heavy" && f.At.X < front.Box.Center().X-1 {
				t.Errorf("ink-heavy at %v, want it in the right half", f.At)
			}
		}
		if got != c.want {
			t.Errorf("%s: found %t, want %t, among\n%s", c.code, got, c.want, listed(findings))
		}
	}
}
