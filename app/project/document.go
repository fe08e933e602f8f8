package project

import (
	"encoding/json"
	"errors"
	"io"
	"maps"
	"math"
	"slices"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// flatFoldPath is the height up to the flat-fold crease, which may be given
// instead of heightPath.
const (
	flatFoldPath = "bag.height_to_flat_fold_mm"
	heightPath   = "bag.height_mm"
)

// Decode reads the bag in bag.json. Entries that are not given take their usual value. The
// error joins all complaints about the file; those about entries are
// *bag.FieldError. A file of a newer version is an error, see Open.
func Decode(r io.Reader) (bag.Spec, error) {
	data, err := readBounded(r, standard().document)
	if err != nil {
		return bag.Spec{}, phrase.Errorf("read bag.json: %s", err)
	}
	read, err := released().decode(data)
	if err == nil && read.age.newer {
		err = phrase.Errorf("format is %q, newer than %s%d; open it with a newer Gussetwright", read.age.format, formatName, version)
	}
	if err != nil {
		return bag.Spec{}, phrase.Errorf("read bag.json: %s", err)
	}
	return read.spec, nil
}

// document is bag.json while it is read.
type document struct {
	complaints
	spec    bag.Spec
	kept    []KeptSize
	age     age
	written map[string]any  // the values in the file by path
	refused map[string]bool // the paths of values of the wrong kind
	ignored []string        // entries of a newer version that are not known here
}

func (h history) decode(data []byte) (*document, error) {
	d := &document{spec: bag.Default(), written: map[string]any{}, refused: map[string]bool{}}
	tree, err := parse(data, &d.complaints)
	if err != nil {
		return nil, err
	}
	if d.age, err = h.migrate(tree); err != nil {
		d.add(err)
		return nil, d.err()
	}
	d.read(tree)
	d.judge()
	if err := d.err(); err != nil {
		if d.age.newer {
			return nil, phrase.Errorf("the file was saved by a newer version (%s) and cannot be shown here; open it with that version: %s", d.age.format, err)
		}
		return nil, err
	}
	return d, nil
}

// refuse complains about a value of the wrong kind. What is missing because of
// that is worth no second complaint.
func (d *document) refuse(complaint *bag.FieldError) {
	d.refused[complaint.Path] = true
	d.add(complaint)
}

// read takes the entries of the tree over.
func (d *document) read(tree map[string]any) {
	d.text(tree, "", "name", &d.spec.Name)
	d.text(tree, "", "date", &d.spec.Date)
	d.text(tree, "", "profile", &d.spec.Profile)
	d.text(tree, "", "currency", &d.spec.Currency)
	groups := d.groups(tree)
	for _, field := range bag.Fields() {
		group, key, _ := strings.Cut(field.Path, ".")
		if value, given := groups[group][key]; given {
			d.entry(&field, value)
		}
	}
	d.flatFold(groups["bag"])
	d.spec.Derive(func(path string) bool {
		_, given := d.written[path]
		return given
	})
	d.artwork(tree)
	d.family(tree)
	d.stock(tree)
	d.breaks(tree)
	d.keptSizes(tree)
	d.unknown(tree, groups)
}

// groups returns the groups of entries, such as bag and handle.
func (d *document) groups(tree map[string]any) map[string]map[string]any {
	groups := map[string]map[string]any{}
	for _, name := range groupNames() {
		value, given := tree[name]
		if !given {
			continue
		}
		group, isGroup := value.(map[string]any)
		if !isGroup {
			d.refuse(&bag.FieldError{
				Path: name, Value: shown(value), Limit: phrase.New("not a group of entries"),
				Remedy: phrase.New("write %q: { … } with the entries in braces, or take it out", name),
			})
		}
		groups[name] = group
	}
	return groups
}

// ungrouped returns the entries of the file that stand in no group.
func ungrouped() []string {
	return []string{"name", "date", "profile", "currency", "price_breaks", "family", "stock", "artwork", "kept_sizes"}
}

// groupNames returns the names of the groups of the field table, in its order.
func groupNames() []string {
	var names []string
	for _, field := range bag.Fields() {
		name, _, _ := strings.Cut(field.Path, ".")
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// entry sets one entry of the field table. An entry that is wrong keeps its usual
// value, so that what depends on it raises no complaints of its own.
func (d *document) entry(field *bag.Field, value any) {
	d.written[field.Path] = value
	switch value := value.(type) {
	case json.Number:
		if field.Kind() != bag.Number {
			break
		}
		number := float(value)
		if complaint := field.CheckNumber(number); complaint != nil {
			d.add(asWritten(complaint, value))
			return
		}
		field.SetNumber(&d.spec, number)
		return
	case string:
		if field.Kind() != bag.Choice {
			break
		}
		if complaint := field.CheckChoice(value); complaint != nil {
			d.add(complaint)
			return
		}
		field.SetChoice(&d.spec, value)
		return
	case bool:
		if field.Kind() != bag.Switch {
			break
		}
		field.SetSwitch(&d.spec, value)
		return
	}
	d.add(wrongKind(field, value))
}

// float returns the value of a number. One beyond all floats becomes the largest
// of them, which every limit refuses, and -0 becomes 0.
func float(number json.Number) float64 {
	value, _ := number.Float64()
	return max(-math.MaxFloat64, min(math.MaxFloat64, value)) + 0
}

// flatFold takes the height up to the flat-fold crease.
func (d *document) flatFold(group map[string]any) {
	value, given := group["height_to_flat_fold_mm"]
	if !given {
		return
	}
	field, _ := bag.FieldAt(heightPath)
	alternative := *field
	alternative.Path, alternative.Label, alternative.Symbol = flatFoldPath, "Height to the flat-fold crease", ""
	if other, both := d.written[heightPath]; both {
		d.add(&bag.FieldError{
			Path: flatFoldPath, Label: alternative.Label, Value: shown(value),
			Limit:  phrase.New("given beside %s, which is %s", heightPath, shown(other)),
			Remedy: phrase.New("keep one of them; the standing height is the height to the flat-fold crease + half the gusset"),
		})
		return
	}
	number, isNumber := value.(json.Number)
	if !isNumber {
		d.add(wrongKind(&alternative, value))
		return
	}
	height := bag.HeightFromFlatFold(float(number), d.spec.Body.Gusset)
	if complaint := alternative.CheckNumber(height); complaint != nil {
		complaint.Limit = phrase.New("with half the gusset it makes a standing height that is %s", complaint.Limit)
		complaint.Remedy = phrase.New("enter a value that makes a standing height from %s", field.Range())
		complaint.Value = geometry.WithUnit(shown(value), field.Unit)
		d.add(complaint)
		return
	}
	d.spec.Body.Height = height
}

// text sets an entry that is free text.
func (d *document) text(group map[string]any, prefix, key string, target *string) {
	value, given := group[key]
	if !given {
		return
	}
	text, isText := value.(string)
	if !isText {
		d.refuse(&bag.FieldError{
			Path: join(prefix, key), Value: shown(value), Limit: phrase.New("not a text"),
			Remedy: phrase.New("write it in quotation marks, or take it out"),
		})
		return
	}
	*target = text
}

// judge asks whether the entries fit together. While an entry of the table is
// wrong alone, only what is not in the table is worth a complaint.
func (d *document) judge() {
	wrongAlone := len(d.found) > 0
	for _, complaint := range append(check(&d.spec), checkKept(d.kept)...) {
		var field *bag.FieldError
		if !errors.As(complaint, &field) {
			d.add(complaint)
			continue
		}
		_, inTable := bag.FieldAt(field.Path)
		group, _ := splitPath(field.Path)
		if inTable && wrongAlone || d.refused[field.Path] || d.refused[group] {
			continue
		}
		if value, given := d.written[field.Path]; given {
			field = asWritten(field, value)
		}
		d.add(field)
	}
}

// unknown complains about keys that nothing is known about, or notes them in a
// file of a newer version.
func (d *document) unknown(tree map[string]any, groups map[string]map[string]any) {
	known := append(groupNames(), ungrouped()...)
	d.unknownIn("", tree, func(key string) bool { return slices.Contains(known, key) })
	for _, name := range groupNames() {
		d.unknownIn(name, groups[name], func(key string) bool {
			path := name + "." + key
			_, found := bag.FieldAt(path)
			return found || path == flatFoldPath
		})
	}
}

func (d *document) unknownIn(group string, entries map[string]any, known func(key string) bool) {
	for _, key := range slices.Sorted(maps.Keys(entries)) {
		if known(key) {
			continue
		}
		switch path := join(group, key); {
		case d.age.newer:
			d.ignored = append(d.ignored, path)
		case d.full(): // finding the nearest of many keys in many is slow
			d.more++
		default:
			d.add(&bag.FieldError{
				Path: path, Value: shown(entries[key]), Limit: phrase.New("there is no such entry"), Remedy: nearest(group, path),
			})
		}
	}
}
