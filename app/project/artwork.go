package project

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"gussetwright/geometry/bag"
)

// artworkKeys returns the entries of one piece of artwork.
func artworkKeys() []string {
	return []string{"file", "on", "fit", "x_mm", "y_mm", "scale", "turn_deg"}
}

// artwork takes the list of artwork over.
func (d *document) artwork(tree map[string]any) {
	value, given := tree["artwork"]
	if !given {
		return
	}
	list, isList := value.([]any)
	if !isList {
		d.refuse(&bag.FieldError{
			Path: "artwork", Value: shown(value), Limit: "not a list of pieces",
			Remedy: `write "artwork": [{"file": "front.pdf", "on": "front"}], or take it out`,
		})
	}
	for i, value := range list {
		path := fmt.Sprintf("artwork[%d]", i)
		entries, isGroup := value.(map[string]any)
		if !isGroup {
			d.refuse(&bag.FieldError{
				Path: path, Value: shown(value), Limit: "not a piece of artwork",
				Remedy: `write {"file": "front.pdf", "on": "front"}, or take it out`,
			})
		}
		d.spec.Artwork = append(d.spec.Artwork, d.piece(path, entries))
	}
}

func (d *document) piece(path string, entries map[string]any) bag.Artwork {
	piece := bag.Artwork{Fit: bag.FitCover, Scale: 1}
	d.text(entries, path, "file", &piece.File)
	d.text(entries, path, "on", &piece.On)
	d.text(entries, path, "fit", (*string)(&piece.Fit))
	d.number(entries, path, "x_mm", &piece.X)
	d.number(entries, path, "y_mm", &piece.Y)
	d.number(entries, path, "scale", &piece.Scale)
	d.number(entries, path, "turn_deg", &piece.Turn)
	d.unknownIn(path, entries, func(key string) bool { return slices.Contains(artworkKeys(), key) })
	return piece
}

// number sets a number of a piece of artwork.
func (d *document) number(entries map[string]any, prefix, key string, target *float64) {
	value, given := entries[key]
	if !given {
		return
	}
	path := join(prefix, key)
	number, isNumber := value.(json.Number)
	if !isNumber {
		d.refuse(&bag.FieldError{
			Path: path, Value: shown(value), Limit: "not a number",
			Remedy: "enter a plain number, or take it out",
		})
		return
	}
	d.written[path] = value
	*target = float(number)
}

// checkArtworkNames returns the complaints about names that a container cannot
// hold.
func checkArtworkNames(pieces []bag.Artwork) []error {
	var complaints []error
	spelled := map[string]string{}
	for i, piece := range pieces {
		complain := func(limit, remedy string) {
			complaints = append(complaints, &bag.FieldError{
				Path: fmt.Sprintf("artwork[%d].file", i), Value: shown(piece.File), Limit: limit, Remedy: remedy,
			})
		}
		if piece.File == "" {
			continue // Validate says so
		}
		if err := checkFileName(piece.File); err != nil {
			complain(err.Error(), "enter the name of a file without its folder, such as front.pdf")
			continue
		}
		other, seen := spelled[fold(piece.File)]
		if seen && other != piece.File {
			complain("differs from "+shown(other)+" only in capital letters", "write both alike, or rename one file")
		}
		spelled[fold(piece.File)] = piece.File
	}
	return complaints
}

// checkFileName returns why a name cannot stand in the artwork folder, or nil:
// it must be the same plain file name on every system.
func checkFileName(name string) error {
	switch {
	case name == "":
		return errors.New("empty")
	case !utf8.ValidString(name):
		return errors.New("not UTF-8 text")
	case len(name) > longestEntryName:
		return fmt.Errorf("longer than %d bytes", longestEntryName)
	case name == "." || name == "..":
		return errors.New("a folder, not a file")
	case strings.ContainsAny(name, `/\`):
		return errors.New("a path, not a file name")
	case strings.Contains(name, ":"):
		return errors.New("with a colon, which names a drive or a stream on some systems")
	case strings.ContainsFunc(name, unicode.IsControl):
		return errors.New("with control characters")
	}
	return nil
}

// fold returns the name as file systems see it that take no account of capitals.
func fold(name string) string { return strings.ToLower(strings.ToUpper(name)) }
