package pdf

import "gussetwright/render/pdf/object"

// The objects of a file, under the short names that the writer uses on every line.
type (
	name      = object.Name
	integer   = object.Integer
	number    = object.Number
	boolean   = object.Boolean
	reference = object.Reference
	text      = object.Text
	binary    = object.Binary
	array     = object.Array
	dict      = object.Dict
	entry     = object.Entry
	stream    = object.Stream
	plain     = object.Plain
)

// numbers returns the values as an array.
func numbers(values ...float64) array { return object.Numbers(values...) }
