package project

import (
	"regexp"
	"strconv"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// wrongKind returns the complaint about a value that is not of the kind that the
// entry holds.
func wrongKind(field *bag.Field, value any) *bag.FieldError {
	complaint := &bag.FieldError{Path: field.Path, Label: field.Name(), Value: shown(value)}
	switch field.Kind() {
	case bag.Number:
		complaint.Limit, complaint.Remedy = phrase.New("not a number"), numberRemedy(field, value)
	case bag.Switch:
		complaint.Limit = phrase.New("neither true nor false")
		complaint.Remedy = phrase.New("write true or false without quotation marks")
	case bag.Choice:
		complaint.Limit = phrase.New("not one of the choices")
		complaint.Remedy = phrase.New("%s, in quotation marks", field.CheckChoice("").Remedy)
	}
	if value == nil {
		complaint.Remedy = phrase.New("%s, or take the entry out to get its usual value", complaint.Remedy)
	}
	return complaint
}

// plainNumber says in words what is wanted in a unit.
func plainNumber(unit string) phrase.Word {
	switch unit {
	case "mm":
		return "a plain number of millimetres"
	case "°":
		return "a plain number of degrees"
	case "g/m²":
		return "a plain number of grams per square metre"
	case "µm":
		return "a plain number of micrometres"
	case "%":
		return "a plain number of percent"
	}
	return "a plain number"
}

// numberRemedy proposes the number that a text such as "24 cm" means, where it
// means one that the entry takes.
func numberRemedy(field *bag.Field, value any) phrase.Phrase {
	if text, isText := value.(string); isText && len(text) <= longestShown {
		number, understood := quantity(text, field.Unit)
		if understood && field.CheckNumber(number) == nil {
			return phrase.New("enter %s, %s", plainNumber(field.Unit), geometry.FormatNumber(number, 6))
		}
	}
	return phrase.New("enter %s, from %s", plainNumber(field.Unit), field.Range())
}

var numberWithUnit = regexp.MustCompile(`^\s*([-+]?[0-9]*\.?[0-9]+)\s*(\S*)\s*$`)

// quantity reads a number with a unit after it.
func quantity(text, unit string) (float64, bool) {
	if unit == "mm" {
		length, err := geometry.ParseLength(text, geometry.Millimetre)
		return length, err == nil
	}
	parts := numberWithUnit.FindStringSubmatch(text)
	if parts == nil {
		return 0, false
	}
	number, err := strconv.ParseFloat(parts[1], 64)
	factor, known := unitFactor(unit, strings.ToLower(parts[2]))
	return number * factor, err == nil && known
}

// unitFactor returns how many of the unit one of the written unit makes.
func unitFactor(unit, written string) (float64, bool) {
	same := map[string][]string{
		"°":    {"deg", "degree", "degrees"},
		"g/m²": {"g/m2", "gsm", "g"},
		"µm":   {"um", "μm", "micron", "microns"}, // the second with the Greek letter
		"%":    {"percent", "pc"},
	}
	if written == "" || written == unit {
		return 1, true
	}
	for _, name := range same[unit] {
		if written == name {
			return 1, true
		}
	}
	return 1000, unit == "µm" && written == "mm"
}

// nearest returns the remedy for an unknown key: the known entry that it is most
// like, or else all that the group takes.
func nearest(group, path string) phrase.Phrase {
	known := knownPaths(group)
	best, least := "", max(2, len(path)/3)+1
	for _, candidate := range known {
		if far := unlikeness(path, candidate); far < least {
			best, least = candidate, far
		}
	}
	if best != "" {
		return phrase.New("did you mean %s?", best)
	}
	var inGroup []string
	for _, candidate := range known {
		if owner, key := splitPath(candidate); owner == group {
			inGroup = append(inGroup, key)
		}
	}
	if group == "" {
		return phrase.New("take it out; the file takes %s", strings.Join(inGroup, ", "))
	}
	return phrase.New("take it out; %s takes %s", group, strings.Join(inGroup, ", "))
}

// knownPaths returns the entries that may be meant in a group. What stands in a list
// has keys of its own.
func knownPaths(group string) []string {
	var known []string
	if list, _, isInList := strings.Cut(group, "["); isInList {
		for _, key := range listKeys(list) {
			known = append(known, join(group, key))
		}
		return known
	}
	known = append(known, "format")
	known = append(known, ungrouped()...)
	known = append(known, groupNames()...)
	for _, field := range bag.Fields() {
		known = append(known, field.Path)
	}
	return append(known, flatFoldPath)
}

// listKeys returns the entries of what stands in a list.
func listKeys(list string) []string {
	switch list {
	case "artwork":
		return artworkKeys()
	case "family":
		return sizeKeys()
	case "stock":
		return stockKeys()
	case "kept_sizes":
		return keptKeys()
	}
	return nil
}

func splitPath(path string) (group, key string) {
	dot := strings.LastIndexByte(path, '.')
	return path[:max(dot, 0)], path[dot+1:]
}

// unlikeness counts the letters by which two paths differ. The right key in the
// wrong group counts as one.
func unlikeness(path, candidate string) int {
	_, key := splitPath(path)
	_, candidateKey := splitPath(candidate)
	return min(editDistance(path, candidate), editDistance(key, candidateKey)+1)
}

// editDistance returns how many letters must be put in, left out or replaced to
// turn one text into the other (Levenshtein distance), in capitals or not.
func editDistance(a, b string) int {
	from, to := []rune(strings.ToLower(a)), []rune(strings.ToLower(b))
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i, letter := range from {
		diagonal := row[0]
		row[0] = i + 1
		for j, other := range to {
			replace := diagonal
			if letter != other {
				replace++
			}
			diagonal = row[j+1]
			row[j+1] = min(replace, row[j]+1, diagonal+1)
		}
	}
	return row[len(to)]
}
