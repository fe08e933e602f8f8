package words

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"gussetwright/app/cache"
	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/jobs"
	"gussetwright/app/project"
	"gussetwright/app/watch"
	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork"
	"gussetwright/render/artwork/page"
)

// pngOf returns the head and the end of a PNG file that says to have such a picture.
func pngOf(width, height uint32, depth byte) string {
	head := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, width), height)
	chunk := func(name, body string) string {
		return string(binary.BigEndian.AppendUint32(nil, uint32(len(body)))) + name + body + "\x00\x00\x00\x00"
	}
	return "\x89PNG\r\n\x1a\n" + chunk("IHDR", string(head)+string(depth)+"\x02\x00\x00\x00") + chunk("IDAT", "x") + chunk("IEND", "")
}

// tiffOf returns a TIFF file with fields of whole numbers, each a tag and a value.
func tiffOf(fields ...uint16) string {
	file := binary.LittleEndian.AppendUint16([]byte("II*\x00\x08\x00\x00\x00"), uint16(len(fields)/2))
	for i := 0; i < len(fields); i += 2 {
		file = binary.LittleEndian.AppendUint16(file, fields[i])
		file = append(file, 3, 0, 1, 0, 0, 0)
		file = append(binary.LittleEndian.AppendUint16(file, fields[i+1]), 0, 0)
	}
	return string(file) + "\x00\x00\x00\x00"
}

// pdfOf returns a PDF file of one page with such entries.
func pdfOf(entries string) string {
	var file bytes.Buffer
	file.WriteString("%PDF-1.7\n")
	var places []int
	for i, object := range []string{"<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Count 1/Kids[3 0 R]>>", "<</Type/Page/Parent 2 0 R" + entries + ">>"} {
		places = append(places, file.Len())
		fmt.Fprintf(&file, "%d 0 obj\n%s\nendobj\n", i+1, object)
	}
	table := file.Len()
	fmt.Fprintf(&file, "xref\n0 %d\n0000000000 65535 f \n", len(places)+1)
	for _, place := range places {
		fmt.Fprintf(&file, "%010d 00000 n \n", place)
	}
	fmt.Fprintf(&file, "trailer\n<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(places)+1, table)
	return file.String()
}

func svgOf(inside string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="50mm" viewBox="0 0 50 50">` + inside + `</svg>`
}

// hostile is what cannot be used, by its name.
type hostile struct {
	name, data string
	page       int
	foreign    string // what the libraries say of it in words of their own
}

const cutOff = "unexpected EOF" // io.ErrUnexpectedEOF

func hostileFiles() []hostile {
	doubled := strings.Builder{}
	for level := range 30 {
		fmt.Fprintf(&doubled, `<g id="g%d"><use href="#g%d"/><use href="#g%[2]d"/></g>`, level+1, level)
	}
	return []hostile{
		{"nothing", "", 1, ""},
		{"text", "no picture at all", 1, ""},
		{"another kind", "GIF89a....", 1, ""},
		{"layers", "8BPS....", 1, ""},
		{"a second page of a picture", pngOf(9, 9, 8), 2, ""},

		{"PNG of 10¹⁰ pixels", pngOf(100_000, 100_000, 8), 1, ""},
		{"PNG of many pixels", pngOf(40_000, 40_000, 8), 1, ""},
		{"PNG that takes much memory", pngOf(19_000, 19_000, 16), 1, ""},
		{"PNG without pixels", pngOf(0, 9, 8), 1, ""},
		{"PNG of 3 bits", pngOf(9, 9, 3), 1, "png: unsupported feature: bit depth 3, color type 2"},
		{"PNG that is cut off", pngOf(9, 9, 8)[:30], 1, cutOff},
		{"PNG without a head", "\x89PNG\r\n\x1a\n\x00\x00\x00\x00IEND\x00\x00\x00\x00", 1, ""},
		{"JPEG that is cut off", "\xff\xd8\xff", 1, cutOff},
		{"JPEG without loss", "\xff\xd8\xff\xc3\x00\x0b\x08\x00\x10\x00\x10\x01\x01\x11\x00", 1, ""},
		{"JPEG of 12 bits", "\xff\xd8\xff\xc1\x00\x0b\x0c\x00\x10\x00\x10\x01\x01\x11\x00", 1, ""},
		{"JPEG without channels", "\xff\xd8\xff\xda\x00\x02", 1, ""},
		{"TIFF outside of itself", "II*\x00\xff\xff\xff\xff", 1, cutOff},
		{"TIFF of nothing", tiffOf(), 1, ""},
		{"TIFF of too few channels", tiffOf(262, 5, 277, 1), 1, ""},
		{"TIFF of other inks", tiffOf(262, 5, 332, 2), 1, ""},
		{"TIFF of 32 bits", tiffOf(262, 1, 277, 1, 258, 32), 1, ""},
		{"TIFF packed as 9999", tiffOf(262, 1, 277, 1, 258, 8, 259, 9999), 1, ""},
		{"TIFF without blocks", tiffOf(256, 9, 257, 9, 262, 1, 277, 1, 258, 8), 1, ""},
		{"WebP of a head", "RIFF\x04\x00\x00\x00WEBP", 1, "webp: invalid format"},
		{"WebP that moves", "RIFF\x16\x00\x00\x00WEBPVP8X\x0a\x00\x00\x00\x02\x00\x00\x00\x00\x00\x00\x00\x00\x00", 1, ""},

		{"SVG that is HTML", "<html><body/></html>", 1, ""},
		{"SVG of a prolog", `<?xml version="1.0"?>`, 1, ""},
		{"SVG of another script", `<?xml version="1.0" encoding="EBCDIC"?>` + svgOf(""), 1, `xml: opening charset "EBCDIC":`},
		{"SVG with entities", `<!DOCTYPE svg [<!ENTITY a "x">]>` + svgOf("&a;"), 1, ""},
		{"SVG that is cut off", svgOf("<g>")[:90], 1, "XML syntax error on line 1: unexpected EOF"},
		{"SVG without a size", `<svg xmlns="http://www.w3.org/2000/svg"/>`, 1, ""},
		{"SVG of no number", `<svg xmlns="http://www.w3.org/2000/svg" width="NaN" height="5"/>`, 1, "width"}, // the attribute
		{"SVG of 200 m", `<svg xmlns="http://www.w3.org/2000/svg" width="200000mm" height="5mm"/>`, 1, ""},
		{"SVG far away", svgOf(`<path d="M0 0h1e20"/>`), 1, ""},
		{"SVG that is deep", svgOf(strings.Repeat("<g>", 1000)), 1, ""},
		{"SVG of clips in clips", svgOf(strings.Repeat(`<svg><path d="M0 0h1v1z"/>`, 99) + strings.Repeat(`</svg>`, 99)), 1, ""},
		{"SVG that doubles itself", svgOf(`<defs><g id="g0"/>` + doubled.String() + `</defs><use href="#g30"/>`), 1, ""},

		{"PDF of a head", "%PDF-1.7\n", 1, ""},
		{"PDF that is cut off", pdfOf("/MediaBox[0 0 99 99]")[:100], 1, ""},
		{"PDF without a size", pdfOf("/MediaBox[0 0 0 0]"), 1, ""},
		{"PDF of 7 m", pdfOf("/MediaBox[0 0 20000 99]"), 1, ""},
		{"PDF that is locked", strings.Replace(pdfOf("/MediaBox[0 0 99 99]"), "/Root", "/Encrypt<</Filter/Unheard/V 9>>/ID[<00><00>]/Root", 1), 1, ""},
		{"PDF without a page 9", pdfOf("/MediaBox[0 0 99 99]"), 9, ""},
	}
}

// refusal is an error and what in it is none of our sentences: names of files, and what
// the system and the libraries say.
type refusal struct {
	err     error
	foreign []string
}

// refusals are the errors about hostile artwork, others on its way from disk into files,
// and those about the files themselves, by what is wrong.
func refusals(t *testing.T) map[string]refusal {
	t.Helper()
	all := map[string]refusal{}
	add := func(name string, err error, foreign ...string) {
		if err == nil {
			t.Errorf("%s: it is not refused", name)
			return
		}
		all[name] = refusal{err, foreign}
	}
	for _, h := range hostileFiles() {
		add(h.name, h.open(context.Background()), h.foreign)
	}
	ended, end := context.WithCancel(context.Background())
	end()
	add("work that was ended", hostile{data: svgOf(strings.Repeat("<g/>", 1000)), page: 1}.open(ended), context.Canceled.Error())
	_, err := new(artwork.Art).Form(context.Background())
	add("nothing opened", err)

	folder := t.TempDir()
	_, _, err = project.Take(folder, 1<<20)
	add("a folder", err, folder)
	gone := filepath.Join(folder, "gone.png")
	_, _, err = project.Take(gone, 1<<20)
	var system *fs.PathError
	if !errors.As(err, &system) {
		t.Fatalf("%v holds no error of the system", err)
	}
	add("a file that is gone", err, system.Error(), gone)
	_, err = export.Choose("pdf,paper")
	add("a kind that there is not", err, kindNames())
	_, err = export.Write(ended, export.Job{Snapshot: document.New().State().Snapshot, Kinds: export.Kinds()[:1]}, func(float64, string) {})
	add("files that were ended", err, context.Canceled.Error())
	add("two jobs at a time", jobs.ErrBusy)
	w := watch.New(func(string) {})
	defer w.Close()
	err = nil
	for i := 0; i < 1000 && err == nil; i++ {
		err = w.Add(filepath.Join(folder, strconv.Itoa(i)))
	}
	add("too many files to watch", err, folder)
	refusedFiles(t, add)
	return all
}

// open opens a file as artwork and returns why that does not work.
func (h hostile) open(ctx context.Context) error {
	page.KeepIn(cache.Folder("pdfium"))
	_, err := artwork.Open(ctx, "leaf.png", []byte(h.data), h.page)
	return err
}

func kindNames() string {
	var names []string
	for _, kind := range export.Kinds() {
		names = append(names, kind.Name)
	}
	return strings.Join(names, ", ")
}

var (
	quoted = regexp.MustCompile(`"[^"]*"`)
	word   = regexp.MustCompile(`(^|[^\pL\d])\p{Ll}{2,}`) // names of formats begin with a capital
)

// Every sentence of an error about artwork and files comes from a phrase that a translation is
// asked for. What is left when all of them say nothing are values, what stands in
// quotation marks out of the file, and what the libraries say.
func TestRefusalIsInTheLanguageOfTheUser(t *testing.T) {
	for name, refused := range refusals(t) {
		var asked []string
		left := phrase.ErrorIn(refused.err, func(text string) string {
			asked = append(asked, text)
			return strings.Join(place.FindAllString(text, -1), " ")
		})
		if len(asked) == 0 {
			t.Errorf("%s: nothing is translated of %v", name, refused.err)
		}
		for _, foreign := range refused.foreign {
			before, after, found := strings.Cut(left, foreign)
			if left = before + after; !found {
				t.Errorf("%s: %q is said to be in %q", name, foreign, left)
			}
		}
		left = quoted.ReplaceAllString(left, "")
		if rest := word.FindString(left); rest != "" {
			t.Errorf("%s: %q is left of %q when nothing of ours is said: %q", name, rest, refused.err, left)
		}
	}
}

// A refusal says what to do about it: its last sentence asks for something.
func TestRefusedArtworkHasARemedy(t *testing.T) {
	remedy := regexp.MustCompile(`[;:,] ?(or )?(save|export|choose|give|set|make|copy|simplify|remove|write out|ungroup|release|open) [^;:]*$`)
	for _, h := range hostileFiles() {
		err := h.open(context.Background())
		if err == nil || !remedy.MatchString(err.Error()) {
			t.Errorf("%s: %v has no remedy", h.name, err)
		}
	}
}
