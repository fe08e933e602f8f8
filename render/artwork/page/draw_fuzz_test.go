package page

import (
	"bytes"
	"fmt"
	"testing"
)

// copyOf writes objects, the first of which is the catalog, as PDFium does.
func copyOf(objects ...string) []byte {
	file, table := []byte("%PDF-1.7\n"), []byte{}
	for i, o := range objects {
		table = fmt.Appendf(table, "%010d 00000 n\r\n", len(file))
		file = fmt.Appendf(file, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	return fmt.Appendf(file, "xref\n0 %d\n0000000000 65535 f\r\n%strailer\n<</Root 1 0 R>>\nstartxref\n%d\n%%%%EOF", len(objects)+1, table, len(file))
}

// The reader behind PDFium ends with an error or a form, even for a copy that PDFium
// would never write, and a form is written and read back by it.
func FuzzDraw(f *testing.F) {
	seed := copyOf(
		"<</Pages 2 0 R/OCProperties<</D<</OFF[6 0 R]>>>>>>", "<</Kids[3 0 R]>>",
		"<</MediaBox[0 0 9.5 9]/Rotate 90/Contents 4 0 R/Group<</S/Transparency>>/Resources<</XObject<</X 5 0 R>>/Properties<</P 6 0 R/Q 7 0 R>>>>>>",
		"<</Length 8 0 R>>stream\nq /OC /P BDC (a) Tj /OC /Q BDC /X Do BI /W 1 ID a EI EMC EMC Q Q\nendstream",
		"<</Subtype/Form/BBox[0 0 1 1]/Length 9/A(\\101)/B<41>>>stream\n0 0 1 rg \nendstream", "<</Type/OCG>>",
		"<</Type/OCMD/VE[/Or[/Not 6 0 R]6 0 R]>>", "66")
	if _, err := draw(extract{copied: seed}); err != nil {
		f.Fatal(err)
	}
	f.Add(seed)
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := draw(extract{copied: data, whole: true})
		if err != nil {
			return
		}
		look(d.form, &d.inks)
		file := onePage(d.form)
		if !bytes.Equal(file, onePage(d.form)) {
			t.Fatal("written twice, the form differs")
		}
		again, err := draw(extract{copied: file})
		if err != nil {
			t.Fatalf("%v in what was written:\n%.2000s", err, file)
		}
		if again.form.Width < d.form.Width-0.01 || again.form.Width > d.form.Width+0.01 {
			t.Fatalf("width %v, was %v", again.form.Width, d.form.Width)
		}
	})
}
