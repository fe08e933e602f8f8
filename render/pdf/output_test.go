package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf/object"
	"gussetwright/render/pdf/profile"
	"gussetwright/render/scene"
)

// pressIntent returns an intent with a profile of class prtr for CMYK: the one that
// Ghostscript has built in or beside it. It serves for no other end than these tests.
func pressIntent(t testing.TB) *OutputIntent {
	t.Helper()
	const program = `currentuserparams /ICCProfilesDir get (default_cmyk.icc) concatstrings (r) file
{dup 65536 string readstring exch (%stdout) (w) file exch writestring not {exit} if} loop quit`
	return &OutputIntent{Profile: geomtest.Run(t, "gs", "-q", "-dNODISPLAY", "-dNOSAFER", "-dBATCH", "-c", program)}
}

func forPress(t testing.TB) Info {
	info := day
	info.Output = pressIntent(t)
	return info
}

// The points below are those that ISO 15930-7 asks of a file of PDF/X-4 (from
// memory), with qpdf as the reader; there is no free program at hand that checks them.
func TestDeclaresPDFX4(t *testing.T) {
	pages := pages()
	pages[0].Items = append(pages[0].Items, scene.Placed{Form: quadrants(), At: at(0, 0, 50, 0, 0, 50), Opacity: 0.5})
	info := forPress(t)
	file := produceWith(t, pages, info)
	d := readFileByQpdf(t, file)

	if out := string(geomtest.Run(t, "qpdf", "--check", file)); !strings.Contains(out, "PDF Version: 1.6") || !strings.Contains(out, "File is not encrypted") {
		t.Errorf("version and protection: %s", out)
	}
	intents := d.get(d.root(), "OutputIntents").([]any)
	if len(intents) != 1 {
		t.Fatalf("%d output intents", len(intents))
	}
	read, err := profile.Read(info.Output.Profile)
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]any{"Type": "/OutputIntent", "S": "/GTS_PDFX", "OutputConditionIdentifier": "u:" + read.Name, "Info": "u:" + read.Name} {
		if got := d.get(intents[0], key); got != want {
			t.Errorf("output intent: %s is %v, want %v", key, got, want)
		}
	}
	if n := d.get(intents[0], "DestOutputProfile", "N"); n != 4.0 {
		t.Errorf("the profile has N %v", n)
	}
	if got := d.stream(d.resolve(intents[0]).(map[string]any)["/DestOutputProfile"]); !bytes.Equal(got, info.Output.Profile) {
		t.Errorf("the profile in the file has %d bytes and differs from the %d given", len(got), len(info.Output.Profile))
	}
	trailer := d.objects["trailer"].Value.(map[string]any)
	if id := trailer["/ID"].([]any); len(id) != 2 || trailer["/Encrypt"] != nil {
		t.Errorf("trailer %v: want an identifier of two parts and no encryption", trailer)
	}
	list := keys(d.get(d.root(), "OCProperties", "D"))
	if !slices.Contains(list, "Name") || slices.Contains(list, "AS") {
		t.Errorf("the list of layers has %v: want a name and no rules", list)
	}
	checkInfo(t, d, info)
	checkBoxesForPress(t, d)
	// No action, script or note anywhere, no alternate picture, no PostScript.
	for name, object := range d.objects {
		entries, _ := object.Value.(map[string]any)
		if object.Stream.Dict != nil {
			entries = object.Stream.Dict
		}
		for _, barred := range []string{"/AA", "/OpenAction", "/JS", "/Annots", "/AcroForm", "/ArtBox", "/Alternates", "/OPI", "/TR", "/HTP"} {
			if entries[barred] != nil {
				t.Errorf("%s has %s", name, barred)
			}
		}
		if entries["/Type"] == "/FontDescriptor" && entries["/FontFile2"] == nil {
			t.Errorf("%s: the font is not embedded", name)
		}
	}
}

func checkInfo(t *testing.T, d document, info Info) {
	t.Helper()
	table := d.get(d.objects["trailer"].Value, "Info")
	for key, pattern := range map[string]string{
		"Title": "^u:" + info.Title + "$", "Trapped": "^/False$",
		"CreationDate": `^u:D:\d{14}\+00'00'$`, "ModDate": `^u:D:\d{14}\+00'00'$`,
	} {
		if got := fmt.Sprint(d.get(table, key)); !regexp.MustCompile(pattern).MatchString(got) {
			t.Errorf("%s is %s, want %s", key, got, pattern)
		}
	}
	if d.get(table, "GTS_PDFXVersion") != nil {
		t.Error("the claim stands in the document information, as in older PDF/X")
	}
	packet := d.stream(d.get(d.objects["trailer"].Value, "Root").(map[string]any)["/Metadata"])
	var xmp struct {
		Parts []struct {
			Trapped  string `xml:"http://ns.adobe.com/pdf/1.3/ Trapped"`
			Version  string `xml:"http://www.npes.org/pdfx/ns/id/ GTS_PDFXVersion"`
			Document string `xml:"http://ns.adobe.com/xap/1.0/mm/ DocumentID"`
			Revision string `xml:"http://ns.adobe.com/xap/1.0/mm/ VersionID"`
			Class    string `xml:"http://ns.adobe.com/xap/1.0/mm/ RenditionClass"`
			Modify   string `xml:"http://ns.adobe.com/xap/1.0/ ModifyDate"`
			Title    string `xml:"title>Alt>li"`
		} `xml:"RDF>Description"`
	}
	if err := xml.Unmarshal(packet, &xmp); err != nil || len(xmp.Parts) != 2 {
		t.Fatalf("%v in %s", err, packet)
	}
	first, second := xmp.Parts[0], xmp.Parts[1]
	if first.Trapped != "False" || first.Title != info.Title || first.Modify != "2026-11-25T00:00:00+00:00" {
		t.Errorf("metadata: %+v", first)
	}
	if second.Version != "PDF/X-4" || second.Revision != "1" || second.Class != "default" ||
		!regexp.MustCompile(`^uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`).MatchString(second.Document) {
		t.Errorf("metadata: %+v", second)
	}
}

func checkBoxesForPress(t *testing.T, d document) {
	t.Helper()
	for i, page := range d.pages() {
		var boxes [][]float64
		for _, key := range []string{"MediaBox", "BleedBox", "TrimBox"} {
			var box []float64
			for _, side := range d.get(page, key).([]any) {
				box = append(box, side.(float64))
			}
			boxes = append(boxes, box)
		}
		for j := 1; j < len(boxes); j++ {
			out, in := boxes[j-1], boxes[j]
			if in[0] < out[0] || in[1] < out[1] || in[2] > out[2] || in[3] > out[3] {
				t.Errorf("page %d: box %v sticks out of %v", i+1, in, out)
			}
		}
		group := d.get(page, "Group")
		if blends := i == 0; blends && d.get(group, "CS") != "/DeviceCMYK" || !blends && group != nil {
			t.Errorf("page %d: group %v", i+1, group)
		}
	}
}

func TestIdentifierOfTheDocument(t *testing.T) {
	info := forPress(t)
	find := func(pages []scene.Drawing, info Info) string {
		data, err := build(pages, info, true)
		if err != nil {
			t.Fatal(err)
		}
		return string(regexp.MustCompile(`uuid:[0-9a-f-]+`).Find(data))
	}
	other := info
	other.Title = "Another"
	first := find(pages(), info)
	if first == "" || find(pages(), info) != first || find(pages(), other) == first || find(pages()[:1], info) == first {
		t.Errorf("identifier %q: it must follow from title and drawing, and from them alone", first)
	}
}

// Colours of artwork that do not say which RGB they are are read as sRGB, in every
// form, also within others; what says so itself is left alone.
func TestRGBIsTakenForSRGB(t *testing.T) {
	own := &object.Indirect{Value: array{name("CalRGB"), dict{{"WhitePoint", numbers(0.95, 1, 1.09)}}}}
	inner := &object.Form{Width: 9, Height: 9, Content: []byte("1 0 0 rg 0 0 9 9 re f")}
	known := &object.Form{Width: 9, Height: 9, Resources: dict{{"ColorSpace", &object.Indirect{Value: dict{{"DefaultRGB", own}}}}}}
	outer := &object.Form{Width: 9, Height: 9, Content: []byte("/A Do /B Do"), Resources: dict{
		{"ColorSpace", dict{{"Mine", own}}}, {"XObject", dict{{"A", inner.XObject()}, {"B", known.XObject()}}},
	}}
	pages := []scene.Drawing{placing(scene.Placed{Form: outer, At: at(0, 0, 50, 0, 0, 50), Opacity: 1})}
	d := readFileByQpdf(t, produceWith(t, pages, forPress(t)))
	form := d.get(d.pages()[0], "Resources", "XObject", "Form1")
	for what, resources := range map[string]any{"outer": d.get(form, "Resources"), "inner": d.get(form, "Resources", "XObject", "A", "Resources")} {
		space, isArray := d.get(resources, "ColorSpace", "DefaultRGB").([]any)
		if !isArray || space[0] != "/ICCBased" || !bytes.Equal(d.stream(space[1]), profile.SRGB()) || d.get(space[1], "N") != 3.0 {
			t.Errorf("%s: RGB is %v", what, space)
		}
	}
	if got := keys(d.get(form, "Resources", "ColorSpace")); !reflect.DeepEqual(got, []string{"DefaultRGB", "Mine"}) {
		t.Errorf("colour spaces of the form: %v", got)
	}
	if space := d.get(form, "Resources", "XObject", "B", "Resources", "ColorSpace", "DefaultRGB").([]any); space[0] != "/CalRGB" {
		t.Errorf("RGB of the form that knows it is %v", space)
	}
	if bytes.Contains(produce(t, pages, true), []byte("ICCBased")) {
		t.Error("a file that declares nothing has a profile put in")
	}
}

func TestArtworkThatPDFX4DoesNotAllow(t *testing.T) {
	ring := &object.Indirect{}
	ring.Value = array{ring, dict{{"Filter", array{name("LZWDecode")}}}}
	for _, c := range []struct {
		want      string
		resources dict
	}{
		{"the font Caslon is not embedded", dict{{"Font", dict{{"F", &object.Indirect{Value: dict{{"Type", name("Font")}, {"Subtype", name("Type1")}, {"BaseFont", name("Caslon")}}}}}}}},
		{"the font Bodoni is not embedded", dict{{"Font", dict{{"F", dict{{"Type", name("Font")}, {"Subtype", name("Type0")}, {"DescendantFonts", array{
			dict{{"Type", name("Font")}, {"Subtype", name("CIDFontType2")}, {"BaseFont", name("Bodoni")}, {"FontDescriptor", dict{}}},
		}}}}}}}},
		{"packed by LZW", dict{{"XObject", dict{{"X", ring}}}}},
		{"holds PostScript", dict{{"XObject", dict{{"X", stream{Dict: dict{{"Subtype", name("PS")}}}}}}}},
		{"another file (OPI)", dict{{"XObject", dict{{"X", plain{Dict: dict{{"OPI", dict{}}}}}}}}},
		{"tones of the press", dict{{"ExtGState", dict{{"G", dict{{"Type", name("ExtGState")}, {"TR", name("Identity")}}}}}}},
	} {
		form := &object.Form{Width: 1, Height: 1, Resources: c.resources}
		pages := []scene.Drawing{placing(scene.Placed{Form: form, At: at(0, 0, 50, 0, 0, 50), Opacity: 1})}
		_, err := build(pages, forPress(t), true)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "page 1 (Placing): item 1") {
			t.Errorf("error is %v, want one with %q", err, c.want)
		}
		if _, err := build(pages, day, true); err != nil {
			t.Errorf("%s: without a profile: %v", c.want, err)
		}
	}
	// A font whose letters are there is fine.
	whole := dict{{"Font", dict{{"F", dict{{"Type", name("Font")}, {"Subtype", name("TrueType")}, {"FontDescriptor", &object.Indirect{Value: dict{{"FontFile2", &object.Indirect{Value: stream{}}}}}}}}}}}
	pages := []scene.Drawing{placing(scene.Placed{Form: &object.Form{Width: 1, Height: 1, Resources: whole}, At: at(0, 0, 50, 0, 0, 50), Opacity: 1})}
	if _, err := build(pages, forPress(t), true); err != nil {
		t.Error(err)
	}
}

func TestBadOutputIntents(t *testing.T) {
	good := pressIntent(t).Profile
	change := func(at int, with string) []byte {
		changed := slices.Clone(good)
		copy(changed[at:], with)
		return changed
	}
	for _, c := range []struct {
		profile []byte
		want    string
	}{
		{nil, "no ICC profile"},
		{[]byte(strings.Repeat("x", 500)), "no ICC profile"},
		{good[:len(good)/2], "damaged: it should have"},
		{profile.SRGB(), `"sRGB" is that of a screen (class mntr); choose the profile of the printing condition`},
		{change(12, "scnr"), "scanner or camera"},
		{change(16, "RGB "), "is for RGB inks; choose one for printing in CMYK"},
		{change(8, "\x05"), "version 5"},
		{change(128, "\xFF\xFF"), "damaged: it lists"},
		{change(128+4+4, "\xFF"), `damaged: its part "desc"`},
	} {
		info := day
		info.Output = &OutputIntent{Profile: c.profile}
		var out bytes.Buffer
		err := Write(&out, pages(), info)
		if err == nil || !strings.Contains(err.Error(), "output profile: ") || !strings.Contains(err.Error(), c.want) || out.Len() > 0 {
			t.Errorf("error is %v (%d bytes written), want one with %q", err, out.Len(), c.want)
		}
	}
	info := forPress(t)
	info.Title = " "
	if _, err := build(pages(), info, true); err == nil || !strings.Contains(err.Error(), "the title is missing") {
		t.Errorf("without a title the error is %v", err)
	}
}

func TestConditionIsWhatTheCallerSays(t *testing.T) {
	info := forPress(t)
	info.Output.Condition, info.Output.Info = "House sheet 4", "Uncoated white, our press"
	d := readFileByQpdf(t, produceWith(t, []scene.Drawing{placing(scene.Fill{Path: geometry.RectAt(0, 0, 9, 9).Path(), Ink: &scene.CMYK{C: 1}})}, info))
	intent := d.get(d.root(), "OutputIntents").([]any)[0]
	if d.get(intent, "OutputConditionIdentifier") != "u:House sheet 4" || d.get(intent, "Info") != "u:Uncoated white, our press" {
		t.Errorf("intent %v", d.resolve(intent))
	}
}
