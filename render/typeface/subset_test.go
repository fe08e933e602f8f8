package typeface

import (
	"bytes"
	"encoding/binary"
	"reflect"
	"sync"
	"testing"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

func glyphsOf(face *Face, text string) []uint16 {
	var glyphs []uint16
	for _, r := range text {
		glyph, _ := face.Glyph(r)
		glyphs = append(glyphs, glyph)
	}
	return glyphs
}

func subset(t testing.TB, face *Face, text string) []byte {
	t.Helper()
	file, err := face.Subset(glyphsOf(face, text))
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// tables reads the directory of a TrueType file as the OpenType specification
// lays it out, and checks the sum of each table.
func tables(t *testing.T, file []byte) map[string][]byte {
	t.Helper()
	found := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(file[4:])) {
		record := file[12+16*i:]
		start, length := binary.BigEndian.Uint32(record[8:]), binary.BigEndian.Uint32(record[12:])
		tag, data := string(record[:4]), file[start:start+length]
		found[tag] = data
		sum := uint32(0)
		for at := range data {
			if tag == "head" && at >= 8 && at < 12 {
				continue // left out of its own sum
			}
			sum += uint32(data[at]) << (24 - 8*(at%4))
		}
		if want := binary.BigEndian.Uint32(record[4:]); sum != want {
			t.Errorf("table %s adds up to %08x, its record says %08x", tag, sum, want)
		}
	}
	return found
}

func TestSubsetFile(t *testing.T) {
	file := subset(t, Regular(), "Cut×²")
	found := tables(t, file)
	// The tables that ISO 32000-1, 9.9 asks for in an embedded TrueType font
	// (value from memory), besides the ones with hinting.
	for _, tag := range []string{"glyf", "head", "hhea", "hmtx", "loca", "maxp", "cvt ", "fpgm", "prep"} {
		if len(found[tag]) == 0 {
			t.Errorf("table %q is missing", tag)
		}
	}
	if got := binary.BigEndian.Uint16(found["maxp"][4:]); got != 6 {
		t.Errorf("the file has %d glyphs, want 6: five and the empty one", got)
	}
	// Bytes 20 to 36 of this table are the dates of making and of changing.
	if whole := Regular().sfnt.Tables["head"]; !bytes.Equal(found["head"][20:36], whole[20:36]) {
		t.Error("the file has another date than the face")
	}
	sum := uint32(0)
	for at := 0; at < len(file); at += 4 {
		sum += binary.BigEndian.Uint32(file[at:])
	}
	if sum != 0xB1B0AFBA {
		t.Errorf("the whole file adds up to %08x, want B1B0AFBA as the OpenType specification asks", sum)
	}
}

// Source of the outlines: golang.org/x/image/font/sfnt on the whole face and on
// the subset, to which a character map is added so that it reads it.
func TestSubsetKeepsTheOutlines(t *testing.T) {
	const text = "Ag09×·–²°µé"
	for _, isBold := range []bool{false, true} {
		whole := outside(t, isBold)
		found := tables(t, subset(t, Of(isBold), text))
		for _, tag := range []string{"cmap", "name", "OS/2", "post"} {
			found[tag] = Of(isBold).sfnt.Tables[tag]
		}
		// Without glyph names, which no longer fit the number of glyphs.
		found["post"] = append([]byte{0, 3, 0, 0}, found["post"][4:32]...)
		cut, err := sfnt.Parse(pack(found))
		if err != nil {
			t.Fatal(err)
		}
		for at, r := range []rune(text) {
			glyph, err := whole.GlyphIndex(nil, r)
			if err != nil {
				t.Fatal(err)
			}
			if want, got := outline(t, whole, glyph), outline(t, cut, sfnt.GlyphIndex(at+1)); !reflect.DeepEqual(got, want) {
				t.Errorf("bold %v: the outline of %q differs in the subset", isBold, r)
			}
		}
	}
}

func outline(t *testing.T, face *sfnt.Font, glyph sfnt.GlyphIndex) sfnt.Segments {
	t.Helper()
	segments, err := face.LoadGlyph(&sfnt.Buffer{}, glyph, fixed.I(2048), nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(segments) == 0 {
		t.Fatalf("glyph %d is empty", glyph)
	}
	return segments
}

// The font library spoils the font that it takes a subset of; the shared face
// must come out whole, also when many documents are written at a time.
func TestSubsetLeavesTheFaceAlone(t *testing.T) {
	face := Regular()
	first := subset(t, face, "first")
	count, metrics := face.sfnt.NumGlyphs(), face.Metrics()
	var group sync.WaitGroup
	for _, text := range []string{"a", "some other letters", "first"} {
		group.Go(func() {
			if _, err := face.Subset(glyphsOf(face, text)); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	if got := face.sfnt.NumGlyphs(); got != count || got < 700 {
		t.Errorf("the face has %d glyphs left of %d", got, count)
	}
	if face.Metrics() != metrics {
		t.Error("the measures of the face have changed")
	}
	if !bytes.Equal(subset(t, face, "first"), first) {
		t.Error("the same subset gives other bytes the second time")
	}
}

func TestSubsetOfAnUnknownGlyph(t *testing.T) {
	if _, err := Regular().Subset([]uint16{60000}); err == nil {
		t.Error("glyph 60000 of a face with some 700 should be an error")
	}
}

func BenchmarkSubset(b *testing.B) {
	for b.Loop() {
		subset(b, Regular(), "Cutting, creasing, gluing 0123456789 × mm")
	}
}
