// Package assets holds what the program brings along.
package assets

import "embed"

// DemoName is the file name of the demo project.
const DemoName = "tea-house.gusset"

// Demo is the demo project: the gift bag of an invented tea house, as a project
// file.
//
//go:embed demo/tea-house.gusset
var Demo []byte

// Icons holds the icon of the program and the small icons of its buttons, in the
// folder icon.
//
//go:embed icon/*.svg icon/*.png
var Icons embed.FS

// Translations holds the texts of the program, a file for each language, in the
// folder translations.
//
//go:embed translations/*.json
var Translations embed.FS

// UsualSizes is the list of usual bag sizes, our own selection, as package product
// reads it.
//
//go:embed sizes/usual-sizes.json
var UsualSizes []byte
