package raster

import (
	"bytes"
	"encoding/binary"
	"image"
	"math"
	"testing"

	"gussetwright/render/ink"
)

// inkTIFF returns a TIFF file of inks, uncompressed and in one strip (TIFF 6.0,
// section 16), with further fields if wanted.
func inkTIFF(size image.Point, turn int, at func(x, y int) [4]byte) []byte {
	order := binary.LittleEndian
	fields := []struct{ tag, kind, count, value uint32 }{
		{256, 4, 1, uint32(size.X)},
		{257, 4, 1, uint32(size.Y)},
		{258, 1, 4, 0x08080808},
		{259, 3, 1, 1},
		{262, 3, 1, 5},
		{273, 4, 1, 8 + 2 + 10*12 + 4},
		{274, 3, 1, uint32(turn)},
		{277, 3, 1, 4},
		{278, 4, 1, uint32(size.Y)},
		{279, 4, 1, uint32(4 * size.X * size.Y)},
	}
	out := bytes.NewBufferString("II*\x00\x08\x00\x00\x00")
	binary.Write(out, order, uint16(len(fields)))
	for _, f := range fields {
		binary.Write(out, order, [2]uint16{uint16(f.tag), uint16(f.kind)})
		binary.Write(out, order, [2]uint32{f.count, f.value})
	}
	binary.Write(out, order, uint32(0))
	for i := range size.X * size.Y {
		inks := at(i%size.X, i/size.X)
		out.Write(inks[:])
	}
	return out.Bytes()
}

func TestInkMap(t *testing.T) {
	size := image.Pt(103, 50)
	data := func(turn int) []byte {
		return inkTIFF(size, turn, func(x, y int) [4]byte {
			switch {
			case x >= 80 && x < 88 && y >= 4 && y < 8:
				return [4]byte{255, 255, 204, 255} // 380 %
			case x == 20 && y == 20:
				return [4]byte{255, 255, 255, 255} // a lone pixel in no ink
			case x < 40:
				return [4]byte{}
			}
			return [4]byte{51, 0, 0, 0} // 20 %
		})
	}
	p := mustRead(t, data(1))
	if p.Ink == nil || p.Ink.Columns != 25 || p.Ink.Rows != 12 {
		t.Fatalf("map of %v is %+v", size, p.Ink)
	}
	percent, cell := p.Ink.Greatest()
	if math.Abs(float64(percent)-380) > 0.01 || cell != image.Pt(20, 1) {
		t.Errorf("greatest ink is %g at %v, want 380 at (20,1)", percent, cell)
	}
	if lone := p.Ink.Percent[5*25+5]; lone != 25 {
		t.Errorf("a lone pixel of 400 %% among 16 counts %g %%, want 25", lone)
	}
	if last := p.Ink.Percent[12*25-1]; math.Abs(float64(last)-20) > 0.01 {
		t.Errorf("last cell has %g %%, want 20", last)
	}
	// On its side (6), the left of the stored picture is at the top: cell (20, 1) of
	// 25 × 12 goes to column 12 − 1 − 1 and row 20.
	p = mustRead(t, data(6))
	if _, cell := p.Ink.Greatest(); cell != image.Pt(10, 20) || p.Ink.Columns != 12 {
		t.Errorf("greatest ink of the turned picture is at %v of %d columns, want (10,20) of 12", cell, p.Ink.Columns)
	}
	if want := ink.RGB(0.2, 0, 0, 0); p.Levels[0].RGBAAt(10, 60) != want {
		t.Errorf("cyan of 20 %% shows as %v, want %v", p.Levels[0].RGBAAt(10, 60), want)
	}
}

func TestInkMapIsCoarse(t *testing.T) {
	p := mustRead(t, inkTIFF(image.Pt(5000, 3), 1, func(x, _ int) [4]byte { return [4]byte{byte(x / 4990 * 255)} }))
	if p.Ink.Columns != mostCells || p.Ink.Rows != 1 {
		t.Fatalf("map of %d × %d cells", p.Ink.Columns, p.Ink.Rows)
	}
	if percent, cell := p.Ink.Greatest(); percent != 100 || cell.X != mostCells-1 {
		t.Errorf("greatest ink is %g at %v", percent, cell)
	}
	if mustRead(t, asPNG(t, sample())).Ink != nil {
		t.Error("a picture in RGB has a map of ink")
	}
}

// Source: ImageMagick reads the same files; of the one without a marker, ISO 32000-1
// (7.4.8 and 8.9.5.2), by which a PDF file that holds it takes 255 for full ink.
func TestInksOfJPEG(t *testing.T) {
	data := convert(t, sample(), "jpg:", append([]string{"-sampling-factor", "4:4:4"}, asInks...)...)
	at := bytes.Index(data, []byte("\xff\xee\x00\x0eAdobe"))
	if at < 0 || data[at+15] != 2 {
		t.Fatal("ImageMagick writes inks in another way than as lightness, colour and black")
	}
	compare(t, stored(t, mustRead(t, data)), pixels(t, data, "cmyk"), 3, 0.6)
	plain := bytes.Clone(data)
	plain[at+15] = 0 // all channels are inks, whatever they look like then
	want := pixels(t, plain, "cmyk")
	compare(t, stored(t, mustRead(t, plain)), want, 3, 0.6)

	unmarked := bytes.Join([][]byte{plain[:at], plain[at+16:]}, nil)
	for i := range want {
		want[i] = ^want[i]
	}
	compare(t, stored(t, mustRead(t, unmarked)), want, 3, 0.6)
}
