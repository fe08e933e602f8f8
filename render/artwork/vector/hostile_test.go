package vector

import (
	"bytes"
	"context"
	"encoding/base64"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"image/png"
	"runtime"
	"strings"
	"testing"
)

const small = `width="100mm" height="100mm" viewBox="0 0 100 100">`

// hugePNG says in its head that it has so many pixels.
func hugePNG(width, height uint32) string {
	var out bytes.Buffer
	if err := png.Encode(&out, photo(1, 1)); err != nil {
		panic(err)
	}
	data := out.Bytes()
	binary.BigEndian.PutUint32(data[16:], width)
	binary.BigEndian.PutUint32(data[20:], height)
	binary.BigEndian.PutUint32(data[29:], crc32.ChecksumIEEE(data[12:29]))
	return "data:image/png;base64," + base64.StdEncoding.EncodeToString(data)
}

// doubling returns symbols each of which uses the one before so many times.
func doubling(levels, times int, innermost string) string {
	var b strings.Builder
	b.WriteString(`<defs><g id="g0">` + innermost + `</g>`)
	for level := 1; level <= levels; level++ {
		fmt.Fprintf(&b, `<g id="g%d">`, level)
		for range times {
			fmt.Fprintf(&b, `<use href="#g%d" x="1"/>`, level-1)
		}
		b.WriteString(`</g>`)
	}
	fmt.Fprintf(&b, `</defs><use href="#g%d"/>`, levels)
	return b.String()
}

func TestHostileFiles(t *testing.T) {
	leaf := `<path d="M0 0h1v1z"/>`
	cases := []struct {
		name, file string
		failure    string // what the error holds
		tooMuch    bool
	}{
		{"nothing", "", "empty", false},
		{"blanks", " \n\t ", "empty", false},
		{"no SVG", "%PDF-1.7\n", "is no SVG", false},
		{"a PNG", "\x89PNG\r\n\x1a\n\x00\x00", "is no SVG", false},
		{"HTML", "<html><body/></html>", "is no SVG", false},
		{"another name space", `<svg xmlns="urn:x"/>`, "is no SVG", false},
		{"packed", "\x1f\x8b\x08\x00", "plain SVG", false},
		{"UTF-16", "\xff\xfe<\x00s\x00", "UTF-8", false},
		{"another encoding", `<?xml version="1.0" encoding="EBCDIC"?>` + head + small + `</svg>`, "UTF-8", false},
		{"only a prolog", `<?xml version="1.0"?><!-- < -->`, "holds no drawing", false},
		{"truncated", head + small + `<g><path d="M0 0`, "broken", false},
		{"crossed tags", head + small + `<g><a></g></a></svg>`, "broken", false},
		{"broken UTF-8", head + small + "<desc>\xff</desc></svg>", "broken", false},
		{"unknown entity", head + small + `<desc>&nbsp;</desc></svg>`, "broken", false},
		{"entities", `<!DOCTYPE svg [<!ENTITY a "x">]>` + head + small + `<desc>&a;</desc></svg>`, "save it without entities", false},
		{"entities that grow", `<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>` + head + small + `&b;</svg>`, "save it without entities", false},
		{"outside entity", `<!DOCTYPE svg [<!ENTITY % x SYSTEM "file:///etc/passwd"> %x;]>` + head + small + `</svg>`, "save it without entities", false},
		{"too long", strings.Repeat(" ", mostBytes) + head + small + `</svg>`, "bytes", true},
		{"too many elements", head + small + strings.Repeat("<g/>", mostElements) + `</svg>`, "elements", true},
		{"too many foreign elements", head + small + `<x:x xmlns:x="urn:x">` + strings.Repeat("<x:g/>", mostElements) + `</x:x></svg>`, "elements", true},
		{"too many attributes", head + small + `<g ` + strings.Repeat(`a="" `, mostAttributes+1) + `/></svg>`, "attributes", true},
		{"too deep", head + small + strings.Repeat("<g>", 100_000), "elements within each other", true},
		{"groups with opacity", head + small + strings.Repeat(`<g opacity=".9">`+leaf, mostGroups+1) + leaf + strings.Repeat(`</g>`, mostGroups+1) + `</svg>`, "opacity", true},
		{"clips in clips", head + small + `<clipPath id="c"><circle r="90"/></clipPath>` + strings.Repeat(`<g clip-path="url(#c)">`+leaf, mostClips+1) + strings.Repeat(`</g>`, mostClips+1) + `</svg>`, "clip", true},
		{"drawings in drawings", head + small + strings.Repeat(`<svg>`+leaf, mostClips+1) + strings.Repeat(`</svg>`, mostClips+1) + `</svg>`, "clip", true},
		{"a path too long", head + small + `<path d="M0 0` + strings.Repeat("h1 ", mostInPath+1) + `"/></svg>`, "one path", true},
		{"a polygon too long", head + small + `<polygon points="` + strings.Repeat("1 ", 2*mostInPath+2) + `"/></svg>`, "one path", true},
		{"too many rules", head + small + `<style>` + strings.Repeat("a,", mostRules+1) + `a{fill:red}</style></svg>`, "style rules", true},
		{"shapes doubled", head + small + doubling(20, 2, leaf) + `</svg>`, "takes on", true},
		{"shapes by tens", head + small + doubling(9, 10, leaf) + `</svg>`, "shapes with every use", true},
		{"nothing doubled", head + small + doubling(30, 2, "") + `</svg>`, "repeats", true},
		{"segments repeated", head + small + doubling(4, 10, `<path d="M0 0`+strings.Repeat("h1 ", 10_000)+`"/>`) + `</svg>`, "lines and curves", true},
		{"blanks repeated", head + small + doubling(4, 10, `<rect transform="`+strings.Repeat(" ", 100_000)+`scale(2)" width="1" height="1"/>`) + `</svg>`, "repeats", true},
		{"images repeated", head + small + doubling(4, 10, `<image width="1" height="1" href="`+dataJPEG()+`"/>`) + `</svg>`, "repeats", true},
		{"a huge image", head + small + `<image width="1" height="1" href="` + hugePNG(100_000, 100_000) + `"/></svg>`, "pixels", true},
		{"far away", head + small + `<path d="M0 0h1e20"/></svg>`, "far outside", false},
		{"scaled away", head + small + `<g transform="scale(1e15)"><g transform="scale(1e14)"><path d="M0 0h1e20"/></g></g></svg>`, "far outside", false},
		{"a wide pen", head + small + `<path d="M0 0h1" stroke="red" stroke-width="1e25"/></svg>`, "far outside", false},
		{"an image far away", head + small + `<image x="1e20" width="1" height="1" href="` + dataPNG() + `"/></svg>`, "far outside", false},
		{"no numbers", head + `width="NaN" height="Infinity"/>`, "the width", false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			d, err := Read(context.Background(), []byte(c.file))
			runtime.ReadMemStats(&after)
			if err == nil {
				t.Fatalf("read without an error, %d shapes", len(d.Shapes))
			}
			if !strings.HasPrefix(err.Error(), "read the SVG file: ") || !strings.Contains(err.Error(), c.failure) {
				t.Errorf("%v, want an error with %q", err, c.failure)
			}
			if errors.Is(err, ErrTooMuch) != c.tooMuch {
				t.Errorf("%v: too much is %t", err, !c.tooMuch)
			}
			if taken := after.TotalAlloc - before.TotalAlloc; taken > 1<<30 {
				t.Errorf("took %d MB", taken>>20)
			}
		})
	}
}

// TestStrangeFiles reads files that are odd and harmless, and draws them both ways.
func TestStrangeFiles(t *testing.T) {
	cases := map[string]string{
		"doctype":           `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">` + head + small + `</svg>`,
		"byte order mark":   "\ufeff<?xml version=\"1.0\" encoding=\"utf-8\"?>" + head + small + `</svg>`,
		"old encoding":      `<?xml version="1.0" encoding="ISO-8859-1"?>` + head + small + "<desc>\xe9</desc></svg>",
		"no name space":     `<svg ` + small + `<rect width="3" height="3"/></svg>`,
		"after the end":     head + small + `</svg><junk`,
		"many dashes":       head + small + `<path d="M0 0h1e6v1e6" stroke="red" stroke-dasharray="1e-9"/><path d="M0 0h9" stroke="red" stroke-dasharray="1e-300 0 1e-300"/></svg>`,
		"tiny pens":         head + small + `<path d="M0 0h9l3 3" stroke="red" stroke-width="1e-28" stroke-linejoin="round" stroke-linecap="round"/></svg>`,
		"wide round pens":   head + small + `<path d="M0 0h9l3 3" stroke="red" stroke-width="1e6" stroke-linejoin="round" stroke-linecap="round"/></svg>`,
		"far curves":        head + small + `<path d="M-1e6 0C1e6 1e6 1e6-1e6-1e6 50" stroke="red" fill="blue"/></svg>`,
		"flat planes":       head + small + `<g transform="scale(1e-20 1)"><path d="M0 0h1e20v50" stroke="red"/></g><g transform="skewX(89.9999999)"><path d="M0 0h1v1e-4" stroke="red"/></g></svg>`,
		"equal points":      head + small + `<path d="M5 5h0v0zC5 5 5 5 5 5z" stroke="red" stroke-width="9" stroke-linejoin="round" stroke-linecap="square" stroke-dasharray="1"/></svg>`,
		"empty boxes":       head + small + `<linearGradient id="g"><stop/><stop offset="1" stop-color="red"/></linearGradient><clipPath id="c" clipPathUnits="objectBoundingBox"><rect width="1" height="1"/></clipPath><path d="M0 0h9" stroke="url(#g)" clip-path="url(#c)"/></svg>`,
		"shrunk gradients":  head + small + `<radialGradient id="g" r="1e-30" fx="5" fr="9"><stop/><stop offset="1" stop-color="red" stop-opacity=".5"/></radialGradient><radialGradient id="h" gradientTransform="scale(0)" href="#g"/><rect width="9" height="9" fill="url(#g)" stroke="url(#h)"/></svg>`,
		"stops in one spot": head + small + `<linearGradient id="g"><stop offset="1"/><stop offset="1" stop-color="red"/><stop offset="0" stop-color="blue" stop-opacity=".5"/></linearGradient><rect width="9" height="9" fill="url(#g)"/></svg>`,
		"endless image":     head + small + `<image width="1" height="1" href="` + hugePNG(1<<31-1, 1<<31-1) + `"/></svg>`,
		"image as a line":   head + small + `<image width="90" height="1e-9" preserveAspectRatio="none" href="` + dataPNG() + `"/></svg>`,
		"style without end": head + small + `<style>path { fill: "red</style><style>@media { a {</style><style>/* </style><style>{}}};;:</style><path style=":;fill:;;!important" d="M0 0h1z"/></svg>`,
		"paints in a row":   head + small + `<rect width="9" height="9" fill="` + strings.Repeat("url(#a) ", 3_000_000) + `"/></svg>`,
		"odd references":    head + small + `<rect width="9" height="9" fill="url(" stroke="url()" clip-path="circle(5)"/><use/><use href="#"/><use href="  "/><image/><image href="data:"/><image width="1" height="1" href="data:;base64,%%%"/></svg>`,
	}
	for name, file := range cases {
		t.Run(name, func(t *testing.T) {
			d := mustRead(t, file)
			if _, err := d.Render(context.Background(), 300, 300); err != nil {
				t.Error(err)
			}
			if _, err := d.Form(context.Background()); err != nil {
				t.Error(err)
			}
			d.LeastLine()
		})
	}
}

func TestRenderRefusesSizes(t *testing.T) {
	d := mustRead(t, head+small+`</svg>`)
	for _, size := range [][2]int{{0, 5}, {5, 0}, {-1, 5}, {1 << 20, 1 << 20}, {1 << 62, 4}} {
		if _, err := d.Render(context.Background(), size[0], size[1]); err == nil {
			t.Errorf("a picture of %v pixels", size)
		}
	}
}

// Work ends when its context does.
func TestWorkEndsWithItsContext(t *testing.T) {
	ended, cancel := context.WithCancel(context.Background())
	d := mustRead(t, foliage())
	cancel()
	if _, err := Read(ended, []byte(foliage())); !errors.Is(err, context.Canceled) {
		t.Errorf("Read: %v", err)
	}
	if _, err := d.Render(ended, 100, 100); !errors.Is(err, context.Canceled) {
		t.Errorf("Render: %v", err)
	}
	if _, err := d.Form(ended); !errors.Is(err, context.Canceled) {
		t.Errorf("Form: %v", err)
	}
}

// A drawing serves several goroutines, and gives the same each time.
func TestDrawingsAreShared(t *testing.T) {
	d := mustRead(t, drawings()[4].svg)
	type result struct{ pixels, form []byte }
	results := make(chan result)
	for range 4 {
		go func() {
			picture, err := d.Render(context.Background(), 200, 150)
			if err != nil {
				t.Error(err)
			}
			form, err := d.Form(context.Background())
			if err != nil {
				t.Error(err)
			}
			results <- result{picture.Pix, onePage(form)}
		}()
	}
	first := <-results
	for range 3 {
		next := <-results
		if !bytes.Equal(next.pixels, first.pixels) || !bytes.Equal(next.form, first.form) {
			t.Error("the same drawing came out in another way")
		}
	}
}

// FuzzRead reads anything, and draws what can be read.
func FuzzRead(f *testing.F) {
	for _, c := range drawings() {
		if len(c.svg) < 8000 {
			f.Add([]byte(c.svg))
		}
	}
	f.Add([]byte(head + small + `<style>a.b#c{fill:red}</style><switch><text>x</text></switch>` + doubling(2, 2, "<path d='M0 0h1'/>") + `</svg>`))
	f.Add([]byte(head + small + `<image width="9" height="9" href="` + hugePNG(1, 1) + `"/></svg>`))
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 20_000 {
			t.Skip()
		}
		d, err := Read(context.Background(), data)
		if err != nil {
			return
		}
		if _, err := d.Render(context.Background(), 40, 30); err != nil {
			t.Error(err)
		}
		form, err := d.Form(context.Background())
		if err != nil {
			t.Error(err)
		}
		onePage(form)
		if width, at, found := d.LeastLine(); found && !(width >= 0 && at.X >= -1e-3 && at.X <= d.Size.X+1e-3) {
			t.Errorf("the thinnest line is %g at %v", width, at)
		}
	})
}
