package page_test

import (
	"bytes"
	"testing"
)

// layered is a page whose layers are used in every way: around operators, as a rule
// over several, on a form, and around text. What is red must not be seen.
func layered(setting string) []byte {
	return handmade(
		"<</Type/Catalog/Pages 2 0 R/OCProperties<</OCGs[10 0 R 11 0 R]/D<<"+setting+">>>>>>",
		"<</Type/Pages/Count 2/Kids[9 0 R 3 0 R]>>",
		"<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]/Contents[4 0 R 5 0 R]/Resources<</Font<</F 8 0 R>>"+
			"/Properties<</Seen 10 0 R/Unseen 11 0 R/Rule 12 0 R/Formula 13 0 R>>/XObject<</Form 6 0 R/Nested 7 0 R>>>>>>",
		streamed("", `/OC /Seen BDC 0 0.5 0 rg 10 10 20 20 re f EMC
/OC /Unseen BDC q 1 0 0 rg 40 10 20 20 re f 1 0 0 RG 5 w 0 90 m 200 90 l S /Span BMC 150 40 20 20 re B EMC Q
0 0 1 rg BT /F 20 Tf 100 10 Td (MM) Tj 60 0 Td EMC`),
		streamed("", `(M) Tj ET 70 10 20 20 re f
/OC /Rule BDC 1 0 0 rg 10 40 20 20 re f EMC /OC /Formula BDC 0 0.5 0 rg 40 40 20 20 re f EMC
/Form Do /Nested Do /OC /Unseen BDC /Nested Do BI /W 1 /H 1 /BPC 8 /CS /RGB ID abc EI EMC`),
		streamed("/Type/XObject/Subtype/Form/BBox[0 0 200 100]/OC 11 0 R", "1 0 0 rg 70 40 20 20 re f"),
		streamed("/Type/XObject/Subtype/Form/BBox[0 0 200 100]/Resources<</Properties<</A 11 0 R>>>>",
			"0.8 g /OC /A BDC 1 0 0 rg 100 40 20 20 re f 0 0.5 0.5 rg EMC 130 40 15 20 re f"),
		"<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>",
		"<</Type/Page/Parent 2 0 R/MediaBox[0 0 50 50]>>",
		"<</Type/OCG/Name(Seen)>>", "<</Type/OCG/Name(Unseen)>>",
		"<</Type/OCMD/OCGs[10 0 R 11 0 R]/P/AllOn>>", "<</Type/OCMD/VE[/And 10 0 R[/Not 11 0 R]]>>")
}

// Another reader, which follows the list of layers in the file, sees what our form
// shows in a file that has no such list (ISO 32000-1, 8.11). mutool 1.21 is not asked:
// it knows no rules over layers, and hides text as a whole text object only.
func TestLayers(t *testing.T) {
	for _, setting := range []string{"/OFF[11 0 R]", "/BaseState/OFF/ON[10 0 R]"} {
		t.Run(setting, func(t *testing.T) {
			data := layered(setting)
			p := read(t, data, 2)
			file := placed(t, p)
			for _, name := range []string{"/OC ", "/OCG", "/OCMD", "/OC/"} {
				if bytes.Contains(file, []byte(name)) {
					t.Errorf("the form still holds %s", name)
				}
			}
			alike(t, "drawn, against pdftoppm", render(t, p, 400, 200), byPoppler(t, data, 2, 400, 200), 1)
			alike(t, "placed, by pdftoppm", byPoppler(t, file, 1, 400, 200), byPoppler(t, data, 2, 400, 200), 0.05)
			picture := render(t, p, 400, 200)
			for y := range 200 {
				for x := range 400 {
					if c := picture.RGBAAt(x, y); c.R > 150 && c.G < 100 && c.B < 100 {
						t.Fatalf("red ink of a hidden layer at (%d, %d)", x, y)
					}
				}
			}
		})
	}
}

// With every layer shown, the red ink must be seen: the check above can fail.
func TestLayersShown(t *testing.T) {
	data := layered("")
	p := read(t, data, 2)
	if c := render(t, p, 200, 100).RGBAAt(50, 80); c.R < 200 || c.G > 50 {
		t.Errorf("%v, want the red of the layer that is shown", c)
	}
	alike(t, "placed, by pdftoppm", byPoppler(t, placed(t, p), 1, 400, 200), byPoppler(t, data, 2, 400, 200), 0.05)
}
