package project

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

var anyBag = entry{name: documentName, data: "{}"}

// hostileContainers are containers that must be refused, with what the message
// must name.
func hostileContainers(t testing.TB) map[string]struct {
	data  []byte
	parts []string
} {
	named := func(name string) []byte { return pack(t, anyBag, entry{name: name, data: "x"}) }
	moded := func(mode fs.FileMode) []byte {
		return pack(t, anyBag, entry{name: "artwork/a.pdf", data: "/etc/passwd", change: func(h *zip.FileHeader) { h.SetMode(mode) }})
	}
	good := pack(t, anyBag, entry{name: "artwork/a.pdf", data: strings.Repeat("artwork ", 500)})
	many := []entry{anyBag}
	for i := range 72 {
		many = append(many, entry{name: fmt.Sprintf("artwork/%d.pdf", i), data: "x"})
	}
	flood := []entry{anyBag}
	for i := range 6000 {
		flood = append(flood, entry{name: fmt.Sprintf("artwork/%d.pdf", i)})
	}
	zeros := strings.Repeat("\x00", 4*mebibyte)
	type hostile = struct {
		data  []byte
		parts []string
	}
	return map[string]hostile{
		"parent folder":         {named("../evil"), []string{`"../evil"`, `".."`, "without its folder"}},
		"parent folder inside":  {named("artwork/../../evil"), []string{`"artwork/../../evil"`, `".."`}},
		"absolute path":         {named("/etc/cron.d/evil"), []string{`"/etc/cron.d/evil"`, "absolute path"}},
		"drive letter":          {named("C:/evil.pdf"), []string{`"C:/evil.pdf"`, "drive"}},
		"stream of a file":      {named("artwork/a.pdf:evil"), []string{"colon"}},
		"backslashes":           {named(`artwork\evil.pdf`), []string{`artwork\\evil.pdf`, "backslash"}},
		"empty name":            {named(""), []string{`entry ""`}},
		"folder name":           {pack(t, anyBag, entry{name: "evil/"}), []string{`"evil/"`}},
		"empty part":            {named("artwork//a.pdf"), []string{`"artwork//a.pdf"`, "empty"}},
		"long name":             {named("artwork/" + strings.Repeat("n", 161)), []string{"longer than 168 bytes", "shorten"}},
		"name not UTF-8":        {named("artwork/\xff.pdf"), []string{"UTF-8", "rename"}},
		"control character":     {named("artwork/a\x07.pdf"), []string{`a\a.pdf`, "artwork/NAME"}},
		"folder in artwork":     {named("artwork/deep/a.pdf"), []string{`"artwork/deep/a.pdf"`, "artwork/NAME"}},
		"unknown entry":         {named("readme.txt"), []string{`"readme.txt"`, "only bag.json, preview.png and artwork/NAME", "take it out"}},
		"unknown entries":       {pack(t, anyBag, entry{name: "a"}, entry{name: "b"}), []string{`"a", "b"`}},
		"link":                  {moded(fs.ModeSymlink | 0o777), []string{`"artwork/a.pdf"`, "not a plain file", "put the file itself"}},
		"device":                {moded(fs.ModeDevice | 0o666), []string{"not a plain file"}},
		"pipe":                  {moded(fs.ModeNamedPipe | 0o666), []string{"not a plain file"}},
		"file that is a folder": {moded(fs.ModeDir | 0o755), []string{"not a plain file"}},
		"document twice":        {pack(t, anyBag, anyBag), []string{`"bag.json"`, "keep one"}},
		"artwork twice":         {pack(t, anyBag, entry{name: "artwork/a.pdf"}, entry{name: "artwork/A.PDF"}), []string{`"artwork/A.PDF"`, `"artwork/a.pdf"`, "keep one"}},
		"encrypted": {
			pack(t, anyBag, entry{name: "artwork/a.pdf", data: "x", change: func(h *zip.FileHeader) { h.Flags |= 1 }}),
			[]string{`"artwork/a.pdf"`, "encrypted", "without a password"},
		},
		"other method":     {withMethod(good, 12), []string{"method 12", "deflate"}},
		"no document":      {pack(t, entry{name: "artwork/a.pdf"}), []string{"no bag.json", "choose another file"}},
		"document inside":  {pack(t, entry{name: "demo/bag.json", data: "{}"}), []string{"no bag.json at its top"}},
		"empty container":  {pack(t), []string{"no bag.json"}},
		"bad document":     {pack(t, entry{name: documentName, data: `{"bag": {"width_mm": 5}}`}), []string{"bag.json: bag.width_mm", "5 mm"}},
		"many entries":     {pack(t, many...), []string{"73 entries", "72", "take some out"}},
		"flood of entries": {pack(t, flood...), []string{"table of contents", "256 KiB"}},
		"long document":    {pack(t, entry{name: documentName, data: `{"name": "` + strings.Repeat("x", mebibyte) + `"}`}), []string{"bag.json", "more than the most, 1 MiB"}},
		"bomb":             {pack(t, anyBag, entry{name: "artwork/a.pdf", data: zeros}), []string{`"artwork/a.pdf"`, "more than 200 times", "without compression"}},
		"bomb as preview":  {pack(t, anyBag, entry{name: previewName, data: zeros}), []string{`"preview.png"`, "more than 200 times"}},
		"bomb with a lying header": {
			withSize(pack(t, anyBag, entry{name: "artwork/a.pdf", data: zeros}), uint32(len(zeros)), 10),
			[]string{`"artwork/a.pdf"`, "damaged"},
		},
		"cut short":        {good[:len(good)-30], []string{"damaged or cut short", "backup"}},
		"cut to the start": {good[:10], []string{"damaged or cut short"}},
		"changed byte":     {changed(good), []string{"damaged or cut short", "backup"}},
	}
}

// withMethod changes the method of the last entry in the table of contents.
func withMethod(container []byte, method uint16) []byte {
	data := bytes.Clone(container)
	at := bytes.LastIndex(data, []byte("PK\x01\x02"))
	binary.LittleEndian.PutUint16(data[at+10:], method) // APPNOTE 4.3.12
	return data
}

// withSize replaces an unpacked size wherever a header claims it.
func withSize(container []byte, from, to uint32) []byte {
	old, claim := binary.LittleEndian.AppendUint32(nil, from), binary.LittleEndian.AppendUint32(nil, to)
	return bytes.ReplaceAll(container, old, claim)
}

// changed returns the container with one byte of the packed artwork changed.
func changed(container []byte) []byte {
	data := bytes.Clone(container)
	at := bytes.LastIndex(data, []byte("artwork/a.pdf"))
	at = bytes.Index(data[:at], []byte("artwork/a.pdf")) + len("artwork/a.pdf")
	data[at+3] ^= 0xff
	return data
}

func TestHostileContainers(t *testing.T) {
	for name, test := range hostileContainers(t) {
		t.Run(name, func(t *testing.T) {
			_, err := readBytes(test.data)
			wantMessage(t, err, append(test.parts, "read project: ")...)
			_, err = ReadFrom(bytes.NewReader(test.data))
			wantMessage(t, err, test.parts...)
		})
	}
}

func TestLimitsWhileUnpacking(t *testing.T) {
	small := limits{document: 100, entries: 5, directory: 4096, file: 5000, total: 8000, ratio: 10, free: 2000}
	noise := func(count int) string {
		data, state := make([]byte, count), uint32(1)
		for i := range data {
			state = state*1664525 + 1013904223
			data[i] = byte(state >> 24)
		}
		return string(data)
	}
	for _, test := range []struct {
		name  string
		data  []byte
		parts []string
	}{
		{"just fits", pack(t, anyBag, entry{name: "artwork/a", data: noise(5000)}, entry{name: "artwork/b", data: noise(2998)}), nil},
		{"packs well but is small", pack(t, anyBag, entry{name: "artwork/a", data: strings.Repeat("a", 2000)}), nil},
		{
			"one byte too much together", pack(t, anyBag, entry{name: "artwork/a", data: noise(5000)}, entry{name: "artwork/b", data: noise(2999)}),
			[]string{`"artwork/b"`, "unpacks to more than the most, 7.812 KiB"},
		},
		{"one byte too much alone", pack(t, anyBag, entry{name: "artwork/a", data: noise(5001)}), []string{`"artwork/a"`, "more than the most, 4.883 KiB"}},
		{"packs too well", pack(t, anyBag, entry{name: "artwork/a", data: strings.Repeat("a", 2001)}), []string{"more than 10 times"}},
		{"whole file", append(pack(t, anyBag), make([]byte, 2*mebibyte)...), []string{"the file has 2 MiB, more than the most, 1.012 MiB"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			read := opening{limits: small, history: released()}
			_, err := read.project(bytes.NewReader(test.data), int64(len(test.data)))
			if test.parts == nil {
				if err != nil {
					t.Fatal(err)
				}
				return
			}
			wantMessage(t, err, test.parts...)
		})
	}
}

// A container that claims to be endless is not read further than a project can be.
func TestReadFromEndlessInput(t *testing.T) {
	read := opening{limits: limits{document: 10, total: 10}, history: released()}
	_, err := read.stream(endless{})
	wantMessage(t, err, "more than the most")
}

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	return len(p), nil
}

func TestContainerRoundTrip(t *testing.T) {
	want := sample()
	var first, second bytes.Buffer
	if err := write(&first, want, standard()); err != nil {
		t.Fatal(err)
	}
	got, err := readBytes(first.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got\n%+v, want\n%+v", got, want)
	}
	if err := write(&second, got, standard()); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("saving what was opened gives other bytes")
	}
}

func TestMissingArtworkIsNoted(t *testing.T) {
	p, err := readBytes(pack(t, entry{name: documentName, data: `{"artwork": [{"file": "a.pdf", "on": "front"}, {"file": "a.pdf", "on": "back"}]}`}))
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Notes) != 1 || !strings.Contains(p.Notes[0].String(), `"a.pdf" is missing; place it again`) {
		t.Errorf("notes %q, want one about a.pdf", p.Notes)
	}
}

// Info-ZIP, a program of other makers, packs what we open: plain, with a folder
// entry, with a password and with a link.
func TestOpenPackedByInfoZIP(t *testing.T) {
	geomtest.Tool(t, "zip")
	t.Chdir(t.TempDir())
	if err := os.Mkdir("artwork", 0o755); err != nil {
		t.Fatal(err)
	}
	writeFile(t, documentName, []byte(`{"artwork": [{"file": "grün.pdf", "on": "front"}]}`))
	writeFile(t, "artwork/grün.pdf", []byte("%PDF-1.7"))
	geomtest.Run(t, "zip", "-r", "plain.zip", documentName, "artwork")
	p, err := Open("plain.zip")
	if err != nil {
		t.Fatal(err)
	}
	if string(p.Files["grün.pdf"]) != "%PDF-1.7" || len(p.Notes) != 0 {
		t.Errorf("files %q, notes %q", p.Files, p.Notes)
	}

	geomtest.Run(t, "zip", "-P", "secret", "password.zip", documentName)
	_, err = Open("password.zip")
	wantMessage(t, err, "open project password.zip", `"bag.json"`, "encrypted")

	if err := os.Symlink("/etc/hostname", filepath.Join("artwork", "link.pdf")); err != nil {
		t.Skip("no links here:", err)
	}
	geomtest.Run(t, "zip", "-y", "link.zip", documentName, "artwork/link.pdf")
	_, err = Open("link.zip")
	wantMessage(t, err, `"artwork/link.pdf"`, "not a plain file")
}

// Info-ZIP tests our container, and Python's zipfile reads it.
func TestContainerReadByOtherTools(t *testing.T) {
	path := filepath.Join(t.TempDir(), "demo.gusset")
	if err := Save(path, sample()); err != nil {
		t.Fatal(err)
	}
	report := string(geomtest.Run(t, "unzip", "-t", path))
	if !strings.Contains(report, "No errors detected") {
		t.Errorf("unzip says %s", report)
	}
	script := "import sys,zipfile\nz=zipfile.ZipFile(sys.argv[1])\nassert z.testzip() is None\n" +
		"print(z.namelist(), z.read('artwork/back.svg').decode(), z.infolist()[0].date_time)"
	got := strings.TrimSpace(string(geomtest.Run(t, "python3", "-c", script, path)))
	want := "['bag.json', 'artwork/back.svg', 'artwork/front.svg', 'preview.png'] <svg></svg> (1980, 1, 1, 0, 0, 0)"
	if got != want {
		t.Errorf("Python reads %s, want %s", got, want)
	}
}

func BenchmarkRead(b *testing.B) {
	p := sample()
	p.Files["front.svg"] = make([]byte, 8*mebibyte)
	var container bytes.Buffer
	if err := write(&container, p, standard()); err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(container.Len()))
	for b.Loop() {
		if _, err := readBytes(container.Bytes()); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleReadFrom() {
	p, err := ReadFrom(strings.NewReader(`{"artwork": [{"file": "front.pdf", "on": "front"}]}`))
	fmt.Println(p.Spec.Artwork[0].Fit == bag.FitCover, p.Notes, err)
	// Output: true [The artwork "front.pdf" is missing; place it again.] <nil>
}
