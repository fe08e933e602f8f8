package raster

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"testing"

	"gussetwright/geometry/geomtest"
)

// profile returns a small ICC profile that is whole (ISO 15076-1, version 2.4):
// linear grey or RGB, or inks that only darken, by a table of two points.
func profile(space string) []byte {
	type tag struct {
		name string
		body []byte
	}
	fixed := func(values ...float64) (out []byte) {
		for _, v := range values {
			out = binary.BigEndian.AppendUint32(out, uint32(int32(v*65536+0.5)))
		}
		return out
	}
	xyz := func(x, y, z float64) []byte { return append([]byte("XYZ \x00\x00\x00\x00"), fixed(x, y, z)...) }
	linear := []byte("curv\x00\x00\x00\x00\x00\x00\x00\x00")
	words := "sample " + space
	description := binary.BigEndian.AppendUint32([]byte("desc\x00\x00\x00\x00"), uint32(len(words)+1))
	description = append(append(description, words...), make([]byte, 1+4+4+2+1+67)...)
	tags := []tag{{"desc", description}, {"cprt", []byte("text\x00\x00\x00\x00none\x00")}, {"wtpt", xyz(0.9642, 1, 0.8249)}}
	class, connection := "mntr", "XYZ "
	switch space {
	case "GRAY":
		tags = append(tags, tag{"kTRC", linear})
	case "RGB ":
		// The primaries of sRGB as seen under D50 (IEC 61966-2-1, as profiles give it).
		tags = append(tags, tag{"rXYZ", xyz(0.4360, 0.2225, 0.0139)}, tag{"gXYZ", xyz(0.3851, 0.7169, 0.0971)},
			tag{"bXYZ", xyz(0.1431, 0.0606, 0.7141)}, tag{"rTRC", linear}, tag{"gTRC", linear}, tag{"bTRC", linear})
	case "CMYK":
		class, connection = "prtr", "Lab "
		tags = append(tags, tag{"A2B0", inkTable()})
	}
	const head = 128
	at := head + 4 + 12*len(tags)
	table, bodies := binary.BigEndian.AppendUint32(nil, uint32(len(tags))), []byte(nil)
	for _, t := range tags {
		table = binary.BigEndian.AppendUint32(append(table, t.name...), uint32(at+len(bodies)))
		table = binary.BigEndian.AppendUint32(table, uint32(len(t.body)))
		bodies = append(bodies, t.body...)
		bodies = append(bodies, make([]byte, -len(bodies)&3)...)
	}
	out := binary.BigEndian.AppendUint32(nil, uint32(at+len(bodies)))
	out = append(out, "\x00\x00\x00\x00\x02\x40\x00\x00"+class+space+connection...)
	out = append(out, 7, 0xea, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0) // 1 January 2026
	out = append(out, "acsp"...)
	out = append(out, make([]byte, 28)...)
	out = append(out, fixed(0.9642, 1, 0.8249)...)
	out = append(out, make([]byte, head-len(out))...)
	return bytes.Join([][]byte{out, table, bodies}, nil)
}

// inkTable returns a table from inks to Lab of two points for each ink.
func inkTable() []byte {
	out := []byte("mft1\x00\x00\x00\x00\x04\x03\x02\x00")
	for i := range 9 {
		unit := uint32(0)
		if i%4 == 0 {
			unit = 1 << 16
		}
		out = binary.BigEndian.AppendUint32(out, unit)
	}
	for i := range 4 * 256 {
		out = append(out, byte(i))
	}
	for i := range 16 {
		light := 255
		for ink, share := range [4]int{30, 45, 10, 95} { // percent of light that each ink takes, black last
			if i>>(3-ink)&1 == 1 {
				light = light * (100 - share) / 100
			}
		}
		out = append(out, byte(light), 128, 128)
	}
	for i := range 3 * 256 {
		out = append(out, byte(i))
	}
	return out
}

// inParts puts a profile into a JPEG file in two parts (ISO 15076-1, annex B.4).
func inParts(file, profile []byte, swapped bool) []byte {
	half := len(profile) / 2
	parts := [][]byte{
		append([]byte("ICC_PROFILE\x00\x01\x02"), profile[:half]...),
		append([]byte("ICC_PROFILE\x00\x02\x02"), profile[half:]...),
	}
	if swapped {
		parts[0], parts[1] = parts[1], parts[0]
	}
	return withSegment(withSegment(file, 0xe2, parts[1]), 0xe2, parts[0]) // each goes ahead of the others
}

func iccp(profile []byte) []byte {
	var packed bytes.Buffer
	packed.WriteString("sample\x00\x00")
	writer := zlib.NewWriter(&packed)
	writer.Write(profile)
	writer.Close()
	return packed.Bytes()
}

func TestProfileIsKept(t *testing.T) {
	path := write(t, "rgb.icc", profile("RGB "))
	webp := convert(t, sample(), "webp:", "-define", "webp:lossless=true")
	for name, c := range map[string]struct {
		data  []byte
		space string
	}{
		"JPEG in parts":  {inParts(asJPEG(t, sample()), profile("RGB "), false), "RGB "},
		"JPEG swapped":   {inParts(asJPEG(t, sample()), profile("RGB "), true), "RGB "},
		"JPEG inks":      {inParts(convert(t, sample(), "jpg:", asInks...), profile("CMYK"), false), "CMYK"},
		"PNG":            {withChunk(asPNG(t, sample()), "iCCP", iccp(profile("RGB "))), "RGB "},
		"PNG grey":       {withChunk(convert(t, sample(), "png:", "-colorspace", "gray"), "iCCP", iccp(profile("GRAY"))), "GRAY"},
		"WebP":           {extended(webp, 32, true, "ICCP", profile("RGB ")), "RGB "},
		"TIFF by others": {convert(t, sample(), "tiff:", "-profile", path), "RGB "},
		"JPEG by others": {convert(t, sample(), "jpg:", "-profile", path), "RGB "},
		"PNG by others":  {convert(t, sample(), "png:", "-profile", path), "RGB "},
		"WebP by others": {convert(t, sample(), "webp:", "-profile", path), "RGB "},
	} {
		t.Run(name, func(t *testing.T) {
			p := mustRead(t, c.data)
			if !bytes.Equal(p.Profile, profile(c.space)) {
				t.Fatalf("profile has %d bytes, want %d; notes %v", len(p.Profile), len(profile(c.space)), p.Notes)
			}
			if name == "JPEG swapped" {
				return // ImageMagick puts parts together as they stand
			}
			// Source: ImageMagick takes the same profile out of the file.
			outside := geomtest.Run(t, "convert", write(t, "file", c.data), "icc:-")
			if !bytes.Equal(p.Profile, outside) {
				t.Errorf("the profile differs from what convert takes out, %d bytes", len(outside))
			}
		})
	}
}

func TestProfileIsLeftOut(t *testing.T) {
	const damage, unfit = "The colour profile in the file is damaged and left out.",
		"The colour profile in the file is for grey and the picture is RGB; the profile is left out."
	whole := profile("RGB ")
	outside := bytes.Clone(whole)
	binary.BigEndian.PutUint32(outside[128+4+4:], 1<<30)
	unmarked := bytes.Clone(whole)
	copy(unmarked[36:], "nope")
	many := bytes.Clone(whole)
	binary.BigEndian.PutUint32(many[128:], 1<<31)
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"cut":               {withChunk(asPNG(t, sample()), "iCCP", iccp(whole[:200])), damage},
		"tag outside":       {withChunk(asPNG(t, sample()), "iCCP", iccp(outside)), damage},
		"no signature":      {withChunk(asPNG(t, sample()), "iCCP", iccp(unmarked)), damage},
		"2³¹ tags":          {withChunk(asPNG(t, sample()), "iCCP", iccp(many)), damage},
		"badly packed":      {withChunk(asPNG(t, sample()), "iCCP", []byte("x\x00\x00rubbish")), damage},
		"no name":           {withChunk(asPNG(t, sample()), "iCCP", []byte("xxxx")), damage},
		"bomb":              {withChunk(asPNG(t, sample()), "iCCP", iccp(make([]byte, mostProfile+1))), damage},
		"other colours":     {withChunk(asPNG(t, sample()), "iCCP", iccp(profile("GRAY"))), unfit},
		"JPEG of one part":  {withSegment(asJPEG(t, sample()), 0xe2, append([]byte("ICC_PROFILE\x00\x02\x02"), whole[238:]...)), damage},
		"JPEG of part 0":    {withSegment(asJPEG(t, sample()), 0xe2, append([]byte("ICC_PROFILE\x00\x00\x01"), whole...)), ""},
		"JPEG of part 3/2":  {withSegment(asJPEG(t, sample()), 0xe2, append([]byte("ICC_PROFILE\x00\x03\x02"), whole...)), ""},
		"JPEG without part": {withSegment(asJPEG(t, sample()), 0xe2, []byte("ICC_PROFILE\x00")), ""},
	} {
		p := mustRead(t, c.data)
		if p.Profile != nil || c.want != "" && !noted(p, c.want) {
			t.Errorf("%s: profile of %d bytes, notes %v", name, len(p.Profile), p.Notes)
		}
	}
}
