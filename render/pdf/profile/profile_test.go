package profile

import (
	"bytes"
	"encoding/binary"
	"math"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// fromGhostscript returns one of the profiles that Ghostscript has built in or beside
// it: an outside maker's, to read and to compare with.
func fromGhostscript(t testing.TB, name string) []byte {
	t.Helper()
	program := "currentuserparams /ICCProfilesDir get (" + name + `) concatstrings (r) file
{dup 65536 string readstring exch (%stdout) (w) file exch writestring not {exit} if} loop quit`
	return geomtest.Run(t, "gs", "-q", "-dNODISPLAY", "-dNOSAFER", "-dBATCH", "-c", program)
}

func TestReadOutsideProfiles(t *testing.T) {
	for _, c := range []struct{ file, class, space string }{
		{"default_cmyk.icc", "prtr", "CMYK"}, {"srgb.icc", "mntr", "RGB"}, {"default_gray.icc", "mntr", "GRAY"},
	} {
		data := fromGhostscript(t, c.file)
		// What follows a profile in its file is no part of it.
		p, err := Read(append(slices.Clone(data), "more"...))
		if err != nil {
			t.Errorf("%s: %v", c.file, err)
			continue
		}
		if p.Class != c.class || p.Space != c.space || p.Name == "" || !bytes.Equal(p.Data, data) {
			t.Errorf("%s: class %q, space %q, name %q, %d bytes", c.file, p.Class, p.Space, p.Name, len(p.Data))
		}
	}
}

func TestPress(t *testing.T) {
	cmyk := fromGhostscript(t, "default_cmyk.icc")
	if p, err := Press(cmyk); err != nil || p.Name == "" {
		t.Errorf("profile %q, error %v", p.Name, err)
	}
	changed := func(at int, with string) []byte {
		data := slices.Clone(cmyk)
		copy(data[at:], with)
		return data
	}
	table := bytes.Index(cmyk[:400], []byte("A2B0"))
	for _, c := range []struct {
		data []byte
		want string
	}{
		{nil, "no ICC profile"},
		{cmyk[:200], "damaged: it should have"},
		{SRGB(), "that of a screen (class mntr)"},
		{changed(classAt, "link"), "fixed conversion"},
		{changed(classAt, "abcd"), `class "abcd"`},
		{changed(spaceAt, "GRAY"), "is for GRAY inks"},
		{changed(table, "XXXX"), "lacks the table"},
		{changed(versionAt, "\x01"), "of version 1"},
	} {
		if _, err := Press(c.data); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error is %v, want one with %q", err, c.want)
		}
	}
}

func TestDescriptionInSeveralLanguages(t *testing.T) {
	text := []byte{0, 'P', 0, 'r', 0, 0xFC, 0, 'f'}
	tag := []byte("mluc\x00\x00\x00\x00\x00\x00\x00\x01\x00\x00\x00\x0CenUS")
	tag = binary.BigEndian.AppendUint32(tag, uint32(len(text)))
	tag = append(binary.BigEndian.AppendUint32(tag, 28), text...)
	if got := describe(tag); got != "Prüf" {
		t.Errorf("described as %q", got)
	}
	if got := describe(tag[:len(tag)-2]); got != "" {
		t.Errorf("a torn description is %q", got)
	}
}

// The profile that we make agrees with Ghostscript's of the same colour space:
// primaries within a thousandth, and the curve within a thousandth of full light.
func TestSRGBAgreesWithGhostscripts(t *testing.T) {
	ours, err := Read(SRGB())
	if err != nil {
		t.Fatal(err)
	}
	theirs, err := Read(fromGhostscript(t, "srgb.icc"))
	if err != nil {
		t.Fatal(err)
	}
	if ours.Class != "mntr" || ours.Space != "RGB" || ours.Name != "sRGB" || len(ours.Data)%4 != 0 || len(ours.Data) != len(SRGB()) {
		t.Errorf("class %q, space %q, name %q", ours.Class, ours.Space, ours.Name)
	}
	for _, tag := range []string{"rXYZ", "gXYZ", "bXYZ"} {
		for part := range 3 {
			value := func(p Profile) float64 {
				return float64(int32(binary.BigEndian.Uint32(p.tags[tag][8+4*part:]))) / 65536
			}
			if got, want := value(ours), value(theirs); math.Abs(got-want) > 0.001 {
				t.Errorf("%s: part %d is %.5f, Ghostscript has %.5f", tag, part, got, want)
			}
		}
	}
	for _, tag := range []string{"rTRC", "gTRC", "bTRC"} {
		for step := range 256 {
			got, want := light(t, ours.tags[tag], float64(step)/255), light(t, theirs.tags[tag], float64(step)/255)
			if math.Abs(got-want) > 0.001 {
				t.Errorf("%s: %d of 255 is %.5f of full light, Ghostscript has %.5f", tag, step, got, want)
				break
			}
		}
	}
}

// light reads a curve between the values that it lists.
func light(t *testing.T, tag []byte, value float64) float64 {
	t.Helper()
	count := 0
	if len(tag) > 12 && string(tag[:4]) == "curv" {
		count = int(binary.BigEndian.Uint32(tag[8:]))
	}
	if count < 2 {
		t.Fatalf("the curve starts with %q", tag[:min(len(tag), 12)])
	}
	place := value * float64(count-1)
	below := min(int(place), count-2)
	at := func(i int) float64 { return float64(binary.BigEndian.Uint16(tag[12+2*i:])) / 65535 }
	return at(below) + (at(below+1)-at(below))*(place-float64(below))
}

// Whatever the bytes, reading ends in an error or a profile that lies within them.
func FuzzRead(f *testing.F) {
	f.Add(SRGB())
	f.Add(SRGB()[:200])
	f.Add([]byte("acsp"))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := Press(data)
		if err == nil && (p.Space != "CMYK" || len(p.Data) > len(data)) {
			t.Errorf("took %d bytes of %d as a profile for %s", len(p.Data), len(data), p.Space)
		}
		p, err = Read(data)
		if err == nil && strings.ContainsAny(p.Name, "\x00\n") {
			t.Errorf("the name is %q", p.Name)
		}
	})
}
