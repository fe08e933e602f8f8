package typeface

import (
	"encoding/binary"
	"fmt"
	"maps"
	"slices"

	"github.com/tdewolff/font"
)

// Subset returns a TrueType file with an empty glyph 0 followed by the given
// glyphs in the given order. The same glyphs give the same bytes every time.
func (f *Face) Subset(glyphs []uint16) ([]byte, error) {
	kept := append([]uint16{0}, glyphs...)
	subset, err := f.copy().Subset(kept, font.SubsetOptions{Tables: font.KeepPDFTables})
	if err != nil {
		return nil, fmt.Errorf("cut the face %s down to %d glyphs: %w", f.name, len(glyphs), err)
	}
	return pack(subset.Tables), nil
}

// copy returns a font that Subset may spoil: it writes the new count of glyphs
// into the headers of the font that it reads from.
func (f *Face) copy() *font.SFNT {
	whole, head, hhea, maxp := *f.sfnt, *f.sfnt.Head, *f.sfnt.Hhea, *f.sfnt.Maxp
	whole.Head, whole.Hhea, whole.Maxp = &head, &hhea, &maxp
	return &whole
}

// Places in a TrueType file (OpenType specification, "Organization of an
// OpenType font" and "head").
const (
	offsetTableSize = 12
	tableRecordSize = 16
	checksumInHead  = 8
	checksumMagic   = 0xB1B0AFBA
)

// pack joins tables into a TrueType file. The font library has a writer too, but
// that one stamps the time of writing into the file.
func pack(tables map[string][]byte) []byte {
	tags := slices.Sorted(maps.Keys(tables))
	file := offsetTable(len(tags))
	file = append(file, make([]byte, tableRecordSize*len(tags))...)
	headAt := 0
	for i, tag := range tags {
		start := len(file)
		file = append(file, tables[tag]...)
		if tag == "head" {
			headAt = start
			binary.BigEndian.PutUint32(file[start+checksumInHead:], 0)
		}
		for len(file)%4 != 0 {
			file = append(file, 0)
		}
		record := file[offsetTableSize+tableRecordSize*i:]
		copy(record, tag)
		binary.BigEndian.PutUint32(record[4:], checksum(file[start:]))
		binary.BigEndian.PutUint32(record[8:], uint32(start))
		binary.BigEndian.PutUint32(record[12:], uint32(len(tables[tag])))
	}
	if headAt > 0 {
		binary.BigEndian.PutUint32(file[headAt+checksumInHead:], checksumMagic-checksum(file))
	}
	return file
}

// offsetTable returns the first bytes of the file: the version and, for a binary
// search, the largest power of two that is not above the number of tables.
func offsetTable(tables int) []byte {
	power, exponent := 1, 0
	for power*2 <= tables {
		power, exponent = power*2, exponent+1
	}
	table := binary.BigEndian.AppendUint32(nil, 0x00010000)
	for _, value := range []int{tables, power * 16, exponent, (tables - power) * 16} {
		table = binary.BigEndian.AppendUint16(table, uint16(value))
	}
	return table
}

// checksum adds up the data, whose length is a multiple of four, as 32 bit numbers.
func checksum(data []byte) uint32 {
	sum := uint32(0)
	for ; len(data) >= 4; data = data[4:] {
		sum += binary.BigEndian.Uint32(data)
	}
	return sum
}
