package project

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// artworkKeys returns the entries of one piece of artwork.
func artworkKeys() []string {
	return []string{
		"file", "page", "on", "fit", "x_mm", "y_mm", "scale", "turn_deg", "mirror", "opacity_percent", "repeat", "holds",
	}
}

// artwork takes the list of artwork over.
func (d *document) artwork(tree map[string]any) {
	d.list(tree, "artwork", `{"file": "front.pdf", "on": "front"}`, func(path string, entries map[string]any) {
		d.spec.Artwork = append(d.spec.Artwork, d.piece(path, entries))
	})
}

func (d *document) piece(path string, entries map[string]any) bag.Artwork {
	piece := bag.NewArtwork("", "")
	d.text(entries, path, "file", &piece.File)
	d.text(entries, path, "on", &piece.On)
	d.text(entries, path, "fit", (*string)(&piece.Fit))
	d.number(entries, path, "x_mm", &piece.X)
	d.number(entries, path, "y_mm", &piece.Y)
	d.number(entries, path, "scale", &piece.Scale)
	d.number(entries, path, "turn_deg", &piece.Turn)
	d.number(entries, path, "page", &piece.Page)
	d.flag(entries, path, "mirror", &piece.Mirror)
	d.number(entries, path, "opacity_percent", &piece.Opacity)
	d.text(entries, path, "repeat", (*string)(&piece.Repeat))
	d.text(entries, path, "holds", (*string)(&piece.Holds))
	d.unknownIn(path, entries, func(key string) bool { return slices.Contains(artworkKeys(), key) })
	return piece
}

// checkFileNames returns the complaints about names that a container cannot hold.
func checkFileNames(spec *bag.Spec) []error {
	type named struct{ path, name string }
	var all []named
	for i := range spec.Artwork {
		all = append(all, named{fmt.Sprintf("artwork[%d].file", i), spec.Artwork[i].File})
	}
	all = append(all, named{"profile", spec.Profile})
	var complaints []error
	spelled := map[string]string{}
	for _, one := range all {
		path, name := one.path, one.name
		complain := func(limit, remedy phrase.Phrase) {
			complaints = append(complaints, &bag.FieldError{Path: path, Value: shown(name), Limit: limit, Remedy: remedy})
		}
		if name == "" {
			continue // artwork without a file is a complaint of Validate
		}
		if why := refuseFileName(name); !why.Empty() {
			complain(why, phrase.New("enter the name of a file without its folder, such as front.pdf"))
			continue
		}
		other, seen := spelled[fold(name)]
		if seen && other != name {
			complain(phrase.New("differs from %s only in capital letters", shown(other)), phrase.New("write both alike, or rename one file"))
		}
		spelled[fold(name)] = name
	}
	return complaints
}

// refuseFileName returns why a name cannot stand in the artwork folder, or nothing:
// it must be the same plain file name on every system.
func refuseFileName(name string) phrase.Phrase {
	switch {
	case name == "":
		return phrase.New("empty")
	case !utf8.ValidString(name):
		return phrase.New("not UTF-8 text")
	case len(name) > longestEntryName:
		return phrase.New("longer than %d bytes", longestEntryName)
	case name == "." || name == "..":
		return phrase.New("a folder, not a file")
	case strings.ContainsAny(name, `/\`):
		return phrase.New("a path, not a file name")
	case strings.Contains(name, ":"):
		return phrase.New("with a colon, which names a drive or a stream on some systems")
	case strings.ContainsFunc(name, unicode.IsControl):
		return phrase.New("with control characters")
	}
	return phrase.Phrase{}
}

// fold returns the name as file systems see it that take no account of capitals.
func fold(name string) string { return strings.ToLower(strings.ToUpper(name)) }
