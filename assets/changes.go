package assets

import _ "embed" // for the list of changes

// Changes says what changed in every version of the program, as package release
// reads it.
//
//go:embed changes.md
var Changes string
