// Package assets holds what the program brings along.
package assets

import _ "embed"

// DemoName is the file name of the demo project.
const DemoName = "tea-house.gusset"

// Demo is the demo project: the gift bag of an invented tea house, as a project
// file.
//
//go:embed demo/tea-house.gusset
var Demo []byte
