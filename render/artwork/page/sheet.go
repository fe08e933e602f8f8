package page

import (
	"fmt"

	"gussetwright/render/pdf/object"
)

// onePage writes a PDF file that holds the form as its only page, for PDFium to draw
// and to measure: so what is seen is what is placed.
func onePage(form *object.Form) []byte {
	file := []byte("%PDF-1.7\n")
	objects := []object.Object{nil} // by number, from 1
	numbering := object.Numbering{
		Reserve: func() object.Reference {
			objects = append(objects, object.Null{})
			return object.Reference(len(objects) - 1)
		},
		Set: func(number object.Reference, o object.Object) { objects[number] = o },
	}
	parent := &object.Indirect{}
	sheet := object.Dict{
		{Key: "Type", Value: object.Name("Page")},
		{Key: "Parent", Value: parent},
		{Key: "MediaBox", Value: object.Numbers(0, 0, form.Width, form.Height)},
		{Key: "Resources", Value: form.Resources},
		{Key: "Contents", Value: &object.Indirect{Value: object.Plain{Data: form.Content}}},
	}
	if form.Group != nil {
		sheet = append(sheet, object.Entry{Key: "Group", Value: form.Group})
	}
	parent.Value = object.Dict{
		{Key: "Type", Value: object.Name("Pages")},
		{Key: "Count", Value: object.Integer(1)},
		{Key: "Kids", Value: object.Array{&object.Indirect{Value: sheet}}},
	}
	root := numbering.Place(&object.Indirect{Value: object.Dict{
		{Key: "Type", Value: object.Name("Catalog")}, {Key: "Pages", Value: parent},
	}})
	offsets := make([]int, len(objects))
	for number := 1; number < len(objects); number++ {
		offsets[number] = len(file)
		file = fmt.Appendf(file, "%d 0 obj\n", number)
		file = append(objects[number].AppendTo(file), "\nendobj\n"...)
	}
	start := len(file)
	file = fmt.Appendf(file, "xref\n0 %d\n0000000000 65535 f \n", len(objects))
	for _, offset := range offsets[1:] {
		file = fmt.Appendf(file, "%010d 00000 n \n", offset)
	}
	trailer := object.Dict{{Key: "Size", Value: object.Integer(len(objects))}, {Key: "Root", Value: root}}
	return fmt.Appendf(trailer.AppendTo(append(file, "trailer\n"...)), "\nstartxref\n%d\n%%%%EOF\n", start)
}
