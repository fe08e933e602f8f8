package pdf

import (
	"crypto/sha256"
	"fmt"

	"gussetwright/render/pdf/object"
)

// header opens the file: the version, and a comment of bytes above 127 which
// tells programs that carry files about that this one is not text.
const header = "%PDF-1.6\n%\xE2\xE3\xCF\xD3\n"

// file collects the numbered objects of a document.
type file struct {
	objects []object.Object
}

// reserve takes the next number for an object that is set later.
func (f *file) reserve() reference {
	f.objects = append(f.objects, nil)
	return reference(len(f.objects))
}

// set fills a reserved number.
func (f *file) set(number reference, o object.Object) { f.objects[number-1] = o }

// add numbers the object.
func (f *file) add(o object.Object) reference {
	number := f.reserve()
	f.set(number, o)
	return number
}

// bytes returns the whole file: objects, table of their places, trailer. The
// identifier is a hash of all objects.
func (f *file) bytes(root, info reference) []byte {
	data := []byte(header)
	places := make([]int, len(f.objects))
	for i, o := range f.objects {
		places[i] = len(data)
		data = fmt.Appendf(data, "%d 0 obj\n", i+1)
		data = append(o.AppendTo(data), "\nendobj\n"...)
	}
	hash := sha256.Sum256(data)
	identifier := binary(hash[:16])
	table := len(data)
	data = fmt.Appendf(data, "xref\n0 %d\n%010d %05d f \n", len(places)+1, 0, 65535)
	for _, place := range places {
		data = fmt.Appendf(data, "%010d %05d n \n", place, 0)
	}
	data = append(data, "trailer\n"...)
	data = dict{
		{"Size", integer(len(places) + 1)},
		{"Root", root},
		{"Info", info},
		{"ID", array{identifier, identifier}},
	}.AppendTo(data)
	return fmt.Appendf(data, "\nstartxref\n%d\n%%%%EOF\n", table)
}
