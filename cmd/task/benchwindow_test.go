package main

import (
	"encoding/binary"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"gussetwright/geometry/geomtest"
)

// dump returns a screen as Xvfb keeps it, with 32 bits a pixel, the least first.
func dump(width, height int, pixels []uint32) []byte {
	header := make([]byte, 104)
	for i, value := range map[int]int{0: 104, 1: 7, 4: width, 5: height, 11: 32, 12: 4 * width, 19: 2} {
		binary.BigEndian.PutUint32(header[4*i:], uint32(value))
	}
	header = append(header, make([]byte, 2*12)...) // colours that no pixel points to
	for _, p := range pixels {
		header = binary.LittleEndian.AppendUint32(header, p)
	}
	return header
}

func TestFrameColours(t *testing.T) {
	good := dump(3, 2, []uint32{0x01000000, 0x02000000, 0, 0xff0000, 0xff0000, 0xff0000})
	with := func(field, value int) []byte {
		changed := append([]byte{}, good...)
		binary.BigEndian.PutUint32(changed[4*field:], uint32(value))
		return changed
	}
	for _, test := range []struct {
		name string
		dump []byte
		want int
		says string
	}{
		{"two colours, with something in the spare byte", good, 2, ""},
		{"the greatest byte first", with(7, 1), 4, ""}, // what was spare is blue then
		{"not written yet", nil, 0, "there is none yet"},
		{"cut off", good[:len(good)-1], 0, "cut off"},
		{"another version", with(1, 6), 0, "version 6"},
		{"sixteen bits", with(11, 16), 0, "2 bytes a pixel"},
		{"lines too short", with(12, 4), 0, "cut off"},
		{"higher than it is", with(5, 1<<31-1), 0, "cut off"},
	} {
		got, err := frameColours(test.dump)
		if got != test.want || (err != nil) != (test.says != "") || err != nil && !strings.Contains(err.Error(), test.says) {
			t.Errorf("%s: got %d, %v, want %d, %q", test.name, got, err, test.want, test.says)
		}
	}
}

// ImageMagick writes such a screen and counts its colours.
func TestFrameColoursAgreeWithImageMagick(t *testing.T) {
	path := filepath.Join(t.TempDir(), "screen.xwd")
	geomtest.Run(t, "convert", "-size", "310x170", "plasma:red-blue", "-depth", "8", "xwd:"+path)
	want, err := strconv.Atoi(string(geomtest.Run(t, "identify", "-format", "%k", "xwd:"+path)))
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := frameColours(data); err != nil || got != want || want < 100 {
		t.Errorf("got %d, %v; ImageMagick counts %d", got, err, want)
	}
}

// The lines are those of proc_pid_stat(5) and proc_pid_status(5).
func TestReadAProcess(t *testing.T) {
	const stat = "4711 (odd) (name) S 1 2 3 4 5 6 7 8 9 10 250 50 13 14 15\n"
	if got, err := processorTime(stat); err != nil || got != 3*time.Second {
		t.Errorf("processor %v, %v; want 250 + 50 hundredths", got, err)
	}
	for _, bad := range []string{"", "4711 (name) Z 1 2", "4711 (name) S 1 2 3 4 5 6 7 8 9 10 many 50 13"} {
		if got, err := processorTime(bad); err == nil {
			t.Errorf("%q: processor %v", bad, got)
		}
	}
	if got, err := residentOf("Name:\tx\nVmHWM:\t  300000 kB\nVmRSS:\t  250000 kB\n"); err != nil || got != 256_000_000 {
		t.Errorf("memory %g, %v", got, err)
	}
	for _, bad := range []string{"", "Name:\tx\n", "VmRSS:\t 250000\n"} {
		if got, err := residentOf(bad); err == nil {
			t.Errorf("%q: memory %g", bad, got)
		}
	}
}

func TestFrameIsWaitedFor(t *testing.T) {
	path := filepath.Join(t.TempDir(), "screen")
	if err := waitForFrame(path); err == nil {
		t.Error("there is no screen, but a frame")
	}
	writeFile(t, path, string(dump(2, 1, []uint32{0, 1}))) // empty as yet
	pixels := make([]uint32, 300)
	for i := range pixels {
		pixels[i] = uint32(i)
	}
	drawn := make(chan error, 1)
	go func() { drawn <- waitForFrame(path) }()
	writeFile(t, path, string(dump(300, 1, pixels)))
	if err := <-drawn; err != nil {
		t.Error(err)
	}
}
