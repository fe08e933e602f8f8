package pdf

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gussetwright/render/scene"
)

// steps wanted on each layer. Source of groups and types: the list for
// GTS_ProcStepsGroup in the Arlington PDF Model of the PDF Association, which
// cites ISO 19593-1, tables 2 and 3; which group fits which line of a bag is our
// reading of the names.
var wantedSteps = map[string][2]string{
	"Artwork":         {},
	"Gluing":          {"/Structural", "/Gluing"},
	"ContentArea":     {"/Positions", "/ContentArea"},
	"Bleed":           {"/Structural", "/Bleed"},
	"Dimensions":      {"/Dimensions", ""},
	"Legend":          {"/Legend", ""},
	"Creasing":        {"/Structural", "/Creasing"},
	"ReverseCreasing": {"/Structural", "/ReverseCreasing"},
	"Punching":        {"/Structural", "/Punching"},
	"Cutting":         {"/Structural", "/Cutting"},
}

func TestLayersDeclareTheirSteps(t *testing.T) {
	d := readByQpdf(t, pages())
	groups := d.get(d.root(), "OCProperties", "OCGs").([]any)
	if len(groups) != len(wantedSteps) {
		t.Errorf("%d layers, want one for each of %d roles on both pages together", len(groups), len(wantedSteps))
	}
	for _, group := range groups {
		title, _ := d.get(group, "Name").(string)
		title = strings.TrimPrefix(title, "u:")
		want, known := wantedSteps[title]
		if !known {
			t.Errorf("layer %q is not wanted", title)
			continue
		}
		if got := d.get(group, "Type"); got != "/OCG" {
			t.Errorf("%s: type %v", title, got)
		}
		metadata := d.get(group, "GTS_Metadata")
		if want[0] == "" {
			if metadata != nil {
				t.Errorf("%s: printed matter must declare no step, has %v", title, metadata)
			}
			continue
		}
		wantKeys := []string{"GTS_ProcStepsGroup", "GTS_ProcStepsType"}
		if want[1] == "" {
			wantKeys = wantKeys[:1] // a type is an error in these groups
		}
		if got := keys(metadata); !reflect.DeepEqual(got, wantKeys) {
			t.Errorf("%s: metadata has the keys %v, want %v", title, got, wantKeys)
		}
		if got := d.get(metadata, "GTS_ProcStepsGroup"); got != want[0] {
			t.Errorf("%s: group %v, want %s", title, got, want[0])
		}
		if got := d.get(metadata, "GTS_ProcStepsType"); want[1] != "" && got != want[1] {
			t.Errorf("%s: type %v, want %s", title, got, want[1])
		}
	}
}

func TestLayerList(t *testing.T) {
	d := readByQpdf(t, pages())
	groups := d.get(d.root(), "OCProperties", "OCGs").([]any)
	list := d.get(d.root(), "OCProperties", "D")
	// No AS and no OFF, so that every layer is seen and stays so.
	if got, want := keys(list), []string{"Name", "ON", "Order"}; !reflect.DeepEqual(got, want) {
		t.Errorf("the list has the keys %v, want %v", got, want)
	}
	if got := d.get(list, "Name"); got != "u:Processing steps" {
		t.Errorf("the list is called %v", got)
	}
	if got := d.get(list, "ON"); !reflect.DeepEqual(got, groups) {
		t.Errorf("visible are %v of %v", got, groups)
	}
	order := slices.Clone(d.get(list, "Order").([]any))
	if d.get(order[0], "Name") != "u:Cutting" {
		t.Errorf("the first in the list is %v, want what is drawn last", d.get(order[0], "Name"))
	}
	slices.Reverse(order)
	if !reflect.DeepEqual(order, groups) {
		t.Errorf("the list shows %v of %v", order, groups)
	}
}

func TestPagesShareLayersAndPlates(t *testing.T) {
	d := readByQpdf(t, pages())
	first, second := d.pages()[0], d.pages()[1]
	for _, resource := range []string{"Properties", "ColorSpace", "ExtGState", "Font"} {
		got, want := d.get(second, "Resources", resource), d.get(first, "Resources", resource)
		if len(want.(map[string]any)) == 0 || !reflect.DeepEqual(got, want) {
			t.Errorf("%s of page 2: %v, of page 1: %v", resource, got, want)
		}
	}
}

func TestPageNamesOnlyWhatItUses(t *testing.T) {
	small := page("Small")
	small.Items = []scene.Item{line(scene.Cutting, 0, 0, 10, 10)}
	d := readByQpdf(t, []scene.Drawing{page("Full"), small})
	for resource, want := range map[string][]string{"Properties": {"Cutting"}, "ColorSpace": {"Cutting"}, "Font": nil} {
		if got := keys(d.get(d.pages()[1], "Resources", resource)); !reflect.DeepEqual(got, want) {
			t.Errorf("%s names %v, want %v", resource, got, want)
		}
	}
}

func TestSpotColours(t *testing.T) {
	d := readByQpdf(t, pages())
	spaces := d.get(d.pages()[0], "Resources", "ColorSpace")
	for _, role := range scene.Roles() {
		space, isArray := d.get(spaces, role.String()).([]any)
		if role == scene.Artwork {
			if isArray {
				t.Error("artwork has a spot colour")
			}
			continue
		}
		if !isArray || len(space) != 4 || space[0] != "/Separation" || space[1] != "/"+role.String() || space[2] != "/DeviceCMYK" {
			t.Errorf("%s: colour space %v", role, space)
			continue
		}
		proof := role.Style().Proof
		for key, want := range map[string]any{
			"FunctionType": 2.0, "N": 1.0, "Domain": []any{0.0, 1.0}, "C0": []any{0.0, 0.0, 0.0, 0.0},
			"C1": []any{proof.C, proof.M, proof.Y, proof.K},
		} {
			if got := d.get(space[3], key); !reflect.DeepEqual(got, want) {
				t.Errorf("%s: %s of the tint is %v, want %v", role, key, got, want)
			}
		}
	}
}

func TestStepsOverprint(t *testing.T) {
	d := readByQpdf(t, pages())
	state := d.get(d.pages()[0], "Resources", "ExtGState", "Step")
	for key, want := range map[string]any{"OP": true, "op": true, "OPM": 1.0} {
		if got := d.get(state, key); got != want {
			t.Errorf("%s is %v, want %v", key, got, want)
		}
	}
}

// A step holds paths and text in its own plate, overprinting, and no other
// layer; only artwork prints in the process inks. Source: the table of contents of
// ISO 19593-1 (6.3 on overlap with print, 6.4 on paths and surfaces); its text was
// not at hand. That layers do not nest is our own rule, on the safe side.
func TestContentOfLayers(t *testing.T) {
	d := readByQpdf(t, pages())
	for i, page := range d.pages() {
		var seen []string
		layer, depth := "", 0
		for number, line := range strings.Split(strings.TrimSpace(d.content(page)), "\n") {
			fields := strings.Fields(line)
			operator, operands := fields[len(fields)-1], fields[:len(fields)-1]
			fail := func(reason string) {
				t.Errorf("page %d, line %d, layer %q: %s: %s", i+1, number+1, layer, line, reason)
			}
			switch operator {
			case "BDC":
				if layer != "" || depth != 0 {
					fail("a layer within another")
				}
				if operands[0] != "/OC" {
					fail("no optional content")
				}
				layer = strings.TrimPrefix(operands[1], "/")
				seen = append(seen, layer)
			case "EMC":
				if depth != 0 {
					fail("the graphics state of the layer stays in force")
				}
				layer = ""
			case "q":
				depth++
			case "Q":
				depth--
			case "gs":
				if operands[0] != "/Step" || layer == "Artwork" {
					fail("wrong graphics state")
				}
			case "CS", "cs":
				if operands[0] != "/"+layer {
					fail("the plate of another step")
				}
			case "SCN", "scn":
				if operands[0] != "1" {
					fail("not the full colour")
				}
			case "k":
				if layer != "Artwork" {
					fail("a step in process inks")
				}
			case "cm":
				if number != 0 {
					fail("a second scale")
				}
			case "m", "l", "c", "h", "S", "f", "w", "d", "j", "BT", "ET", "Tf", "Tm", "Tj":
				if layer == "" {
					fail("drawn on no layer")
				}
			default:
				fail("unknown operator")
			}
		}
		var want []string
		for _, role := range scene.Roles() {
			want = append(want, role.String())
		}
		if !reflect.DeepEqual(seen, want) {
			t.Errorf("page %d: layers are drawn as %v, want %v", i+1, seen, want)
		}
		for _, role := range want[1:] {
			head := fmt.Sprintf("/OC /%[1]s BDC\nq\n/Step gs\n/%[1]s CS\n1 SCN\n/%[1]s cs\n1 scn\n", role)
			if !strings.Contains(d.content(page), head) {
				t.Errorf("page %d: %s does not begin with its plate and overprinting", i+1, role)
			}
		}
	}
}

// Coordinates in the content are those of the drawing.
func TestContentIsInMillimetres(t *testing.T) {
	d := readByQpdf(t, pages())
	content := d.content(d.pages()[0])
	for _, want := range []string{
		"2.8346456693 0 0 2.8346456693 70.8661417323 70.8661417323 cm\n", // 72/25.4, and 25 times that
		"120.1235 0 m\n120.1235 200 l\nS\n",
		"0.35 w\n", "[4 1.5] 0 d\n",
	} {
		if !strings.Contains(content, want) {
			t.Errorf("%q is not in the content", want)
		}
	}
}

func TestFontParts(t *testing.T) {
	d := readByQpdf(t, pages())
	for face, base := range map[string]string{"Regular": "+GoRegular", "Bold": "+Go-Bold"} {
		font := d.get(d.pages()[0], "Resources", "Font", face)
		descendant := d.get(font, "DescendantFonts").([]any)[0]
		for _, c := range []struct {
			from any
			key  string
			want any
		}{
			{font, "Subtype", "/Type0"},
			{font, "Encoding", "/Identity-H"},
			{descendant, "Subtype", "/CIDFontType2"},
			{descendant, "BaseFont", d.get(font, "BaseFont")},
			{d.get(descendant, "FontDescriptor"), "FontName", d.get(font, "BaseFont")},
		} {
			if got := d.get(c.from, c.key); got != c.want {
				t.Errorf("%s: %s is %v, want %v", face, c.key, got, c.want)
			}
		}
		if name := d.get(font, "BaseFont").(string); len(name) != len("/ABCDEF")+len(base) || !strings.HasSuffix(name, base) {
			t.Errorf("%s: name %s", face, name)
		}
		for _, key := range []string{"W", "CIDToGIDMap"} {
			if d.get(descendant, key) == nil {
				t.Errorf("%s: no %s", face, key)
			}
		}
		if d.get(font, "ToUnicode") == nil || d.get(descendant, "FontDescriptor", "FontFile2") == nil {
			t.Errorf("%s: font program or characters are missing", face)
		}
	}
}

func TestDocumentClaimsNoMore(t *testing.T) {
	d := readByQpdf(t, pages())
	want := []string{"Metadata", "OCProperties", "PageMode", "Pages", "Type", "ViewerPreferences"}
	if got := keys(d.root()); !reflect.DeepEqual(got, want) {
		t.Errorf("the catalog has %v, want %v: no output intent, no action, no script", got, want)
	}
	info := d.get(d.objects["trailer"].Value, "Info")
	for key, want := range map[string]any{
		"Title": "u:" + day.Title, "Creator": "u:Gussetwright", "Producer": "u:Gussetwright", "Trapped": "/False",
		"CreationDate": "u:D:20261125000000+00'00'", "ModDate": "u:D:20261125000000+00'00'",
	} {
		if got := d.get(info, key); got != want {
			t.Errorf("%s is %v, want %v", key, got, want)
		}
	}
	for i, page := range d.pages() {
		want := []string{"BleedBox", "Contents", "MediaBox", "Parent", "Resources", "TrimBox", "Type"}
		if got := keys(d.resolve(page)); !reflect.DeepEqual(got, want) {
			t.Errorf("page %d has %v, want %v: no art box, no notes", i+1, got, want)
		}
	}
}
