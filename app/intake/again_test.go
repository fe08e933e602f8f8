package intake

import (
	"bytes"
	"encoding/binary"
	"os"
	"strings"
	"testing"

	"gussetwright/geometry"
)

func (b *bench) toldOf(text string) bool {
	for _, told := range b.told {
		if strings.Contains(told, text) {
			return true
		}
	}
	return false
}

func TestChangedFileIsReadAgain(t *testing.T) {
	b := newBench(t)
	b.set.SetUnit(geometry.Centimetre)
	path := b.write("leaf.svg", svg(50, 50))
	b.Add("front", path)
	b.idle()
	b.doc.MarkSaved()
	newer := svg(60, 55)
	b.write("leaf.svg", newer)
	b.until("reading again", func() bool { return len(b.told) == 1 })
	if want := "leaf.svg was changed and read again. Its size is 6 × 5.5 cm now; it was 5 × 5 cm."; b.told[0] != want {
		t.Errorf("told %q, want %q", b.told[0], want)
	}
	if kept, _ := b.doc.File("leaf.svg"); !bytes.Equal(kept, newer) || !b.doc.State().Dirty {
		t.Errorf("dirty %v, content %q", b.doc.State().Dirty, kept)
	}
	if steps := b.undoSteps(); steps != 1 {
		t.Errorf("reading again makes %d steps", steps-1)
	}
	b.set.SetUnit(geometry.Millimetre)
	b.write("leaf.svg", append(newer, "<!-- again -->"...))
	b.until("reading again", func() bool { return len(b.told) == 2 })
	if !b.toldOf("Its size is the same, 60 × 55 mm.") {
		t.Errorf("told %q", b.told)
	}
	b.write("tea.png", nil) // beside it
	if len(b.alarms) != 0 {
		t.Errorf("alarms %v", b.alarms)
	}
}

func TestMorePixels(t *testing.T) {
	b := newBench(t)
	b.Add("front", b.write("tea.png", picture(t, 40, 60)))
	b.idle()
	b.write("tea.png", picture(t, 80, 120))
	b.until("reading again", func() bool { return len(b.told) == 1 })
	// Without a stated resolution 300 pixels count as an inch, so the size changes too.
	if !b.toldOf("Its size is 6.8 × 10.2 mm now; it was 3.4 × 5.1 mm.") {
		t.Errorf("told %q", b.told)
	}
}

// What cannot be read again is told once, and the project keeps what it has.
func TestLostFile(t *testing.T) {
	b := newBench(t)
	first := svg(50, 50)
	path := b.write("leaf.svg", first)
	b.Add("front", path)
	b.idle()
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	b.until("an alarm", func() bool { return len(b.alarms) == 1 })
	if !strings.HasPrefix(b.alarms[0].Error(), "leaf.svg is not at "+path) {
		t.Errorf("alarm %v", b.alarms[0])
	}
	b.write("leaf.svg", []byte("<svg"))
	b.until("reading again", func() bool { return len(b.queue) > 0 })
	b.idle()
	if kept, _ := b.doc.File("leaf.svg"); !bytes.Equal(kept, first) || len(b.alarms) != 1 || len(b.told) != 0 {
		t.Errorf("content %q, alarms %v, told %q", kept, b.alarms, b.told)
	}
	b.write("leaf.svg", svg(70, 70))
	b.until("reading again", func() bool { return len(b.told) == 1 })
	b.write("leaf.svg", []byte("<svg>> broken"))
	b.until("another alarm", func() bool { return len(b.alarms) == 2 })
	if !strings.Contains(b.alarms[1].Error(), "leaf.svg was changed, but cannot be read again: ") {
		t.Errorf("alarm %v", b.alarms[1])
	}
}

// A file that the bag does not name any more is not read; one that comes back is.
func TestUndoneFileIsReadWhenItComesBack(t *testing.T) {
	b := newBench(t)
	b.Add("front", b.write("leaf.svg", svg(50, 50)))
	b.idle()
	b.doc.Undo()
	b.write("leaf.svg", svg(60, 60))
	b.until("a change", func() bool { return b.origins["leaf.svg"].changed })
	if len(b.queue) != 0 {
		t.Error("a file is read that nobody sees")
	}
	b.doc.Redo()
	b.until("reading again", func() bool { return len(b.told) == 1 })
	if !b.toldOf("60 × 60 mm now") {
		t.Errorf("told %q", b.told)
	}
}

// A profile is an ICC file (ICC.1:2022, 7.2): the head has 128 bytes, the class is at
// 12, the colour space at 16, the signature at 36, and a table of tags follows.
func profileFile(class string) []byte {
	const table = 12
	data := make([]byte, 128+4+12+table)
	binary.BigEndian.PutUint32(data, uint32(len(data)))
	data[8] = 4 // version
	copy(data[12:], class)
	copy(data[16:], "CMYKLab ")
	copy(data[36:], "acsp")
	binary.BigEndian.PutUint32(data[128:], 1)
	copy(data[132:], "A2B0")
	binary.BigEndian.PutUint32(data[136:], 144)
	binary.BigEndian.PutUint32(data[140:], table)
	copy(data[144:], "mft1")
	data[144+8] = 4
	return data
}

func TestProfile(t *testing.T) {
	b := newBench(t)
	b.ChooseProfile(b.write("screen.icc", profileFile("mntr")))
	b.ChooseProfile(b.write("coated.icc", profileFile("prtr")))
	b.idle()
	spec := b.doc.State().Spec
	if len(b.alarms) != 1 || !strings.Contains(b.alarms[0].Error(), "screen") || spec.Profile != "coated.icc" {
		t.Fatalf("profile %q, alarms %v", spec.Profile, b.alarms)
	}
	if undo := b.doc.State().Undo; undo.Path != "profile" || undo.To != "coated.icc" || b.undoSteps() != 1 {
		t.Errorf("undo %+v", undo)
	}
	b.write("coated.icc", append(profileFile("prtr"), "newer"...))
	b.until("reading again", func() bool { return len(b.told) == 1 })
	if !b.toldOf("The output profile coated.icc was changed and read again.") {
		t.Errorf("told %q", b.told)
	}
}
