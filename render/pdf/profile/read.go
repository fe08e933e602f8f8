package profile

import (
	"encoding/binary"
	"strings"
	"unicode/utf16"

	"gussetwright/geometry/phrase"
	"gussetwright/render/limits"
)

// Profile is what the head of a profile says.
type Profile struct {
	Class string // what the profile is of: "prtr" a printing condition, "mntr" a screen, "scnr" a scanner, ...
	Space string // of its colours: "CMYK", "RGB", "GRAY", ...
	Name  string // its description, for people to read; may be empty
	Data  []byte // the profile without anything that followed it in the file
	tags  map[string][]byte
}

// Places in the head of a profile and sizes of its parts, in bytes.
const (
	versionAt   = 8
	classAt     = 12
	spaceAt     = 16
	signatureAt = 36
	headSize    = 128
	tagSize     = 12
	mostTags    = limits.ProfileParts
)

// Read returns what a profile says about itself. Errors say how it is damaged.
func Read(data []byte) (Profile, error) {
	if len(data) < headSize+4 || string(data[signatureAt:signatureAt+4]) != "acsp" {
		return Profile{}, phrase.Errorf("it is no ICC profile; choose a file whose name ends in .icc or .icm")
	}
	size := int64(binary.BigEndian.Uint32(data))
	if size < headSize+4 || size > int64(len(data)) {
		return Profile{}, phrase.Errorf("the profile is damaged: it should have %d bytes and has %d; get it anew", size, len(data))
	}
	data = data[:size]
	if major := data[versionAt]; major != 2 && major != 4 {
		return Profile{}, phrase.Errorf("the profile is of version %d; choose one of version 2 or 4", major)
	}
	tags, err := readTags(data)
	if err != nil {
		return Profile{}, err
	}
	return Profile{
		Class: string(data[classAt : classAt+4]),
		Space: strings.TrimRight(string(data[spaceAt:spaceAt+4]), " "),
		Name:  describe(tags["desc"]),
		Data:  data,
		tags:  tags,
	}, nil
}

func readTags(data []byte) (map[string][]byte, error) {
	count := binary.BigEndian.Uint32(data[headSize:])
	table := data[headSize+4:]
	if count > mostTags || int(count)*tagSize > len(table) {
		return nil, phrase.Errorf("the profile is damaged: it lists %d parts, more than it holds; get it anew", count)
	}
	tags := map[string][]byte{}
	for range count {
		name, start, size := string(table[:4]), uint64(binary.BigEndian.Uint32(table[4:])), uint64(binary.BigEndian.Uint32(table[8:]))
		if start+size > uint64(len(data)) {
			return nil, phrase.Errorf("the profile is damaged: its part %q lies outside of it; get it anew", name)
		}
		tags[name] = data[start : start+size]
		table = table[tagSize:]
	}
	return tags, nil
}

// describe reads a description of either kind: plain text as in version 2, or text
// in several languages as in version 4, of which the first is taken.
func describe(tag []byte) string {
	if len(tag) < 12 {
		return ""
	}
	switch string(tag[:4]) {
	case "desc":
		count := uint64(binary.BigEndian.Uint32(tag[8:]))
		text := tag[12:min(12+count, uint64(len(tag)))]
		return clean(string(text))
	case "mluc":
		if len(tag) < 28 {
			return ""
		}
		length, start := uint64(binary.BigEndian.Uint32(tag[20:])), uint64(binary.BigEndian.Uint32(tag[24:]))
		if start+length > uint64(len(tag)) {
			return ""
		}
		var units []uint16
		for text := tag[start : start+length]; len(text) >= 2; text = text[2:] {
			units = append(units, binary.BigEndian.Uint16(text))
		}
		return clean(string(utf16.Decode(units)))
	}
	return ""
}

// clean ends a text at its zero byte and leaves out what nobody can read.
func clean(text string) string {
	text, _, _ = strings.Cut(text, "\x00")
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7F {
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "")))
}
