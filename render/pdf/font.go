package pdf

import (
	"crypto/sha256"
	"fmt"
	"slices"

	"gussetwright/render/pdf/object"
	"gussetwright/render/typeface"
)

// fonts are the two faces of a document, each with what is written in it.
type fonts [2]*font

// font is a face with the characters that the document shows. Each character
// has a code of its own, numbered from 1 as they appear, so that a text copied
// out of the file is the text that was put in.
type font struct {
	face     *typeface.Face
	resource name
	number   reference // 0 while nothing is written in it
	codes    map[rune]uint16
	shown    []rune   // by code − 1
	glyphs   []uint16 // of the face, by code − 1
}

func newFonts() *fonts {
	return &fonts{
		{face: typeface.Regular(), resource: "Regular", codes: map[rune]uint16{}},
		{face: typeface.Bold(), resource: "Bold", codes: map[rune]uint16{}},
	}
}

// of returns the face for a label.
func (f *fonts) of(isBold bool) *font {
	if isBold {
		return f[1]
	}
	return f[0]
}

// encode returns the codes of a text, two bytes each. A character that the face
// lacks becomes a question mark rather than nothing.
func (f *font) encode(text string) []byte {
	codes := make([]byte, 0, 2*len(text))
	for _, r := range text {
		glyph, shown := f.face.Glyph(r)
		code, known := f.codes[shown]
		if !known {
			f.shown = append(f.shown, shown)
			f.glyphs = append(f.glyphs, glyph)
			code = uint16(len(f.shown))
			f.codes[shown] = code
		}
		codes = append(codes, byte(code>>8), byte(code))
	}
	return codes
}

// reserve returns the number under which the font will stand in the file.
func (f *font) reserve(file *file) reference {
	if f.number == 0 {
		f.number = file.reserve()
	}
	return f.number
}

// used returns those faces that something was written in, as resources.
func (f *fonts) used(file *file, lettered []*font) dict {
	var letters dict
	for _, font := range f {
		if slices.Contains(lettered, font) {
			letters = append(letters, entry{font.resource, font.reserve(file)})
		}
	}
	return letters
}

// embed fills the number of the font with the glyphs used (ISO 32000-1, 9.7).
func (f *font) embed(file *file) error {
	if f.number == 0 {
		return nil
	}
	data, err := f.face.Subset(f.glyphs)
	if err != nil {
		return fmt.Errorf("embed the lettering: %w", err)
	}
	base := name(subsetTag(data) + "+" + f.face.Name())
	program := file.add(stream{dict{{"Length1", integer(len(data))}}, data})
	descendant := file.add(dict{
		{"Type", name("Font")},
		{"Subtype", name("CIDFontType2")},
		{"BaseFont", base},
		{"CIDSystemInfo", dict{{"Registry", text("Adobe")}, {"Ordering", text("Identity")}, {"Supplement", integer(0)}}},
		{"FontDescriptor", file.add(f.descriptor(base, program))},
		{"DW", integer(0)},
		{"W", f.widths()},
		{"CIDToGIDMap", file.add(stream{nil, f.glyphMap()})},
	})
	file.set(f.number, dict{
		{"Type", name("Font")},
		{"Subtype", name("Type0")},
		{"BaseFont", base},
		{"Encoding", name("Identity-H")},
		{"DescendantFonts", array{descendant}},
		{"ToUnicode", file.add(stream{nil, f.unicodeMap()})},
	})
	return nil
}

// subsetTag returns six capital letters that differ from subset to subset.
func subsetTag(data []byte) string {
	hash := sha256.Sum256(data)
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + hash[i]%26
	}
	return string(tag)
}

// symbolic is the flag of a font with other characters than the standard Latin
// ones (ISO 32000-1, table 123).
const symbolic = 1 << 2

func (f *font) descriptor(base name, program reference) dict {
	m := f.face.Metrics()
	return dict{
		{"Type", name("FontDescriptor")},
		{"FontName", base},
		{"Flags", integer(symbolic)},
		{"FontBBox", numbers(1000*m.Left, 1000*m.Bottom, 1000*m.Right, 1000*m.Top)},
		{"ItalicAngle", integer(0)},
		{"Ascent", number(1000 * m.Ascent)},
		{"Descent", number(1000 * m.Descent)},
		{"CapHeight", number(1000 * m.CapHeight)},
		{"StemV", number(1000 * m.Stem)},
		{"FontFile2", program},
	}
}

// widths lists the width of each code from 1 on in thousandths of the em square.
func (f *font) widths() array {
	var list array
	for _, glyph := range f.glyphs {
		list = append(list, number(1000*f.face.Width(glyph)))
	}
	return array{integer(1), list}
}

// glyphMap gives the place of each code in the font program, which lists the
// glyphs in the order of the codes.
func (f *font) glyphMap() []byte {
	places := []byte{0, 0}
	for i := range f.glyphs {
		places = append(places, byte((i+1)>>8), byte(i+1))
	}
	return places
}

// unicodeMap tells programs which character each code stands for, for searching
// and copying. A block holds at most a hundred (ISO 32000-1, 9.10.3).
func (f *font) unicodeMap() []byte {
	const block = 100
	table := []byte(`/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
`)
	for start := 0; start < len(f.shown); start += block {
		part := f.shown[start:min(start+block, len(f.shown))]
		table = fmt.Appendf(table, "%d beginbfchar\n", len(part))
		for i, r := range part {
			table = fmt.Appendf(table, "<%04X> <", start+i+1)
			table = append(object.Append16(table, string(r), '>'), '\n')
		}
		table = append(table, "endbfchar\n"...)
	}
	return append(table, "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n"...)
}
