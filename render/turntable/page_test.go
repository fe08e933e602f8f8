package turntable_test

import (
	"bytes"
	"errors"
	"image"
	"io"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/solid"
	"gussetwright/render/turntable"
)

// nasty are texts that would do harm in a page that took them as they are.
var nasty = []string{
	`</script><script>window.harmed = 1</script>`,
	`</title><img src=x onerror="window.harmed = 2">`,
	`"><svg onload=window.harmed=3>`,
	`' onmouseover='window.harmed = 4`,
	`{{.Title}} ${window.harmed = 5} <!-- `,
	"\u2028 ]]> & &amp; \\u003c",
	`javascript:window.harmed=6`,
}

// withTexts returns a page with the text everywhere a text can be.
func withTexts(p turntable.Page, text string) turntable.Page {
	p.Language, p.Title, p.Described = text, text, text
	p.Approved, p.Cautions = []string{text, text}, []string{text}
	p.Facts = []turntable.Fact{{Label: text, Value: text}}
	p.Swatches = []turntable.Swatch{{Name: text, Value: text}}
	p.Stops, p.Notes = []string{text}, []string{text}
	w := turntable.English()
	for _, word := range []*string{&w.Bag, &w.Turn, &w.Views, &w.Front, &w.Excuse, &w.Colours, &w.Printer, &w.Open, &w.Approval, &w.Yes, &w.No, &w.Name, &w.Print} {
		*word = text
	}
	p.Words = w
	return p
}

// plainJob is a small page without artwork.
func plainJob() turntable.Page {
	return jobOf(teaBag(), 0.1, quadrants).page
}

// Texts stay texts: the browser shows them as they are, runs nothing of them, and finds
// no more elements than with harmless ones.
func TestTextsAreHarmless(t *testing.T) {
	b := openBrowser(t, true)
	b.screen(640, 480, 1, "light")
	const count = `document.querySelectorAll("*").length`
	var elements int
	b.open(written(t, withTexts(plainJob(), "harmless")), "")
	b.evaluate(count, &elements)
	for _, text := range nasty {
		b.open(written(t, withTexts(plainJob(), text)), "")
		var got struct {
			Title, Heading, Fact, Note, Label, Approved string
			Harmed                                      bool
			Elements                                    int
		}
		b.evaluate(`({
			Title: document.title, Heading: document.querySelector("h1").textContent,
			Fact: document.querySelector("dd").textContent, Note: document.querySelector(".notes li").textContent,
			Label: document.getElementById("bag").getAttribute("aria-label"), Approved: document.querySelector(".approved p").textContent,
			Harmed: "harmed" in window, Elements: `+count+`,
		})`, &got)
		if got.Heading != text || got.Fact != text || got.Note != text || got.Label != text || got.Approved != text {
			t.Errorf("%q is shown as %q, %q, %q, %q, %q", text, got.Heading, got.Fact, got.Note, got.Label, got.Approved)
		}
		if strings.Join(strings.Fields(got.Title), " ") != strings.Join(strings.Fields(text), " ") {
			t.Errorf("%q is the title %q", text, got.Title)
		}
		if got.Harmed || got.Elements != elements {
			t.Errorf("%q: harmed %v, %d elements, want %d", text, got.Harmed, got.Elements, elements)
		}
	}
	b.quiet()
}

// outline returns the elements and attributes of a page in their order, and the text of
// its heading, as the HTML parser of golang.org/x/net reads them.
func outline(t testing.TB, page []byte) (shape []string, heading string) {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	for n := range root.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		shape = append(shape, n.Data)
		for _, a := range n.Attr {
			shape = append(shape, " "+a.Key)
		}
		if n.Data == "h1" && n.FirstChild != nil {
			heading = n.FirstChild.Data
		}
	}
	return shape, heading
}

// Whatever a text says, the page has the same elements and attributes.
func FuzzTexts(f *testing.F) {
	for _, text := range nasty {
		f.Add(text)
	}
	f.Add("Quillmoor")
	p := plainJob()
	p.Still = nil
	want, _ := outline(f, written(f, withTexts(p, "harmless")))
	f.Fuzz(func(t *testing.T, text string) {
		if strings.TrimSpace(text) == "" {
			return
		}
		got, heading := outline(t, written(t, withTexts(p, text)))
		if !slices.Equal(got, want) {
			t.Fatalf("%q changes the page", text)
		}
		if plain := !strings.ContainsAny(text, "\r\x00") && strings.ToValidUTF8(text, "") == text; plain && heading != text {
			t.Errorf("%q becomes %q", text, heading)
		}
	})
}

// The page says in words what it shows, also how to turn the bag without a mouse; where
// nobody gave any words, the title.
func TestPageIsDescribed(t *testing.T) {
	for described, want := range map[string]string{"A green bag with ropes.": "A green bag with ropes.", "": "The folded bag: Quillmoor Tea House"} {
		p := plainJob()
		p.Described = described
		root, err := html.Parse(bytes.NewReader(written(t, p)))
		if err != nil {
			t.Fatal(err)
		}
		said := map[string]string{}
		for n := range root.Descendants() {
			for _, a := range n.Attr {
				if n.Data == "canvas" || a.Key == "alt" {
					said[n.Data+" "+a.Key] = a.Val
				}
				if a.Key == "id" && a.Val == "hint" {
					said["hint"] = n.FirstChild.Data
				}
			}
		}
		if said["canvas aria-label"] != want || said["img alt"] != want {
			t.Errorf("says %q and %q, want %q", said["canvas aria-label"], said["img alt"], want)
		}
		if said["canvas aria-describedby"] != "hint" || !strings.Contains(said["hint"], "arrow keys") {
			t.Errorf("%q says how to turn the bag: %q", said["canvas aria-describedby"], said["hint"])
		}
	}
}

// The page of a bag with artwork, of a large one, and of one with a grain that no format
// packs well stay under 2 MB, and are the same bytes when written again.
func TestSizeAndSameness(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	grainy := func(piece *blank.Piece, scale float64) *image.RGBA {
		picture := artwork(t, piece, scale)
		for i := range picture.Pix {
			if i%4 != 3 {
				picture.Pix[i] = uint8(min(max(int(picture.Pix[i])+random.IntN(25)-12, 0), 255))
			}
		}
		return picture
	}
	large := teaBag()
	large.Body.Width, large.Body.Gusset, large.Body.Height = 320, 140, 420
	for name, page := range map[string]turntable.Page{
		"demo": demo(t).page, "grainy": jobOf(teaBag(), 4, grainy).page,
		"large": jobOf(large, 3, func(piece *blank.Piece, scale float64) *image.RGBA { return artwork(t, piece, scale) }).page,
		"plain": plainJob(),
	} {
		first := written(t, page)
		t.Logf("%s: %d bytes, mesh of %d vertices and %d lines", name, len(first), len(page.Mesh.Vertices), len(page.Mesh.Lines))
		if len(first) > 2_000_000 {
			t.Errorf("%s: %d bytes", name, len(first))
		}
		if !bytes.Equal(first, written(t, page)) {
			t.Errorf("%s: other bytes when written again", name)
		}
		if kind := bytes.Contains(first, []byte(`"url":"data:image/jpeg`)); kind != (name == "grainy") && name != "large" {
			t.Errorf("%s: artwork as JPEG: %v", name, kind)
		}
	}
}

// Nothing in the page points outside of it.
func TestPageIsSelfContained(t *testing.T) {
	page := written(t, demo(t).page)
	for _, address := range regexp.MustCompile(`(?i)(src|href|url|action|content)\s*[=(]\s*["']?([a-z]+:)?//`).FindAll(page, -1) {
		t.Errorf("the page points to %s", address)
	}
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	for n := range root.Descendants() {
		for _, a := range n.Attr {
			if (a.Key == "src" || a.Key == "href") && !strings.HasPrefix(a.Val, "data:") && !strings.HasPrefix(a.Val, "#") {
				t.Errorf("%s has %s=%.60s", n.Data, a.Key, a.Val)
			}
			if a.Key == "style" || strings.HasPrefix(a.Key, "on") {
				t.Errorf("%s has %s, which the content security policy forbids", n.Data, a.Key)
			}
		}
	}
}

func TestWriteErrors(t *testing.T) {
	bad := func(change func(*turntable.Page)) turntable.Page {
		p := plainJob()
		p.Mesh.Vertices = slices.Clone(p.Mesh.Vertices)
		p.Mesh.Groups = slices.Clone(p.Mesh.Groups)
		change(&p)
		return p
	}
	tests := []struct {
		name string
		page turntable.Page
		want string
	}{
		{"no mesh", turntable.Page{Title: "nothing"}, "no triangles"},
		{"not a number", bad(func(p *turntable.Page) { p.Mesh.Vertices[3].At.X = math.NaN() }), "vertex 3"},
		{"far away", bad(func(p *turntable.Page) { p.Mesh.Vertices[4].Place.Y = 1e9 }), "vertex 4"},
		{"a missing vertex", bad(func(p *turntable.Page) { p.Mesh.Groups[0].Triangles = [][3]int{{0, 1, 1 << 30}} }), "triangle"},
		{"a line into nowhere", bad(func(p *turntable.Page) {
			p.Mesh.Lines = []solid.Line{{To: geometry.Vec3{Z: math.Inf(1)}}}
		}), "line 0"},
		{"an unknown skin", bad(func(p *turntable.Page) { p.Mesh.Groups[0].Skin = 99 }), "skin 99"},
		{"too many vertices", bad(func(p *turntable.Page) { p.Mesh.Vertices = make([]solid.Vertex, 70000) }), "70000 vertices"},
		{"too many lines", bad(func(p *turntable.Page) { p.Mesh.Lines = make([]solid.Line, 20000) }), "20000 lines"},
		{"no scale", bad(func(p *turntable.Page) { p.Textures[0].Scale = 0 }), "texture of piece 1"},
		{"no height", bad(func(p *turntable.Page) { p.Textures[0].Height = math.NaN() }), "texture of piece 1"},
		{"no pixels", bad(func(p *turntable.Page) { p.Textures[0].Picture = image.NewRGBA(image.Rectangle{}) }), "texture of piece 1"},
	}
	for _, test := range tests {
		if err := turntable.Write(io.Discard, test.page); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: error %v, want one with %q", test.name, err, test.want)
		}
	}
	full := errors.New("no room")
	if err := turntable.Write(failing{full}, plainJob()); !errors.Is(err, full) {
		t.Errorf("a writer that fails: error %v", err)
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }
