package batch

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/project"
	"gussetwright/app/wholefile"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

const newHelp = `gwbatch new starts a project from the size of the standing bag.

Usage: gwbatch new --width 240 --gusset 100 --height 360 [-o FILE]

  --width LENGTH               face width W (front and back)
  --gusset LENGTH              gusset depth D; 0 makes a flat bag
  --height LENGTH              standing height H, base crease to top
  --height-to-flat-fold LENGTH instead of --height, where the size was measured
                               up to the flat-fold crease: H is D/2 more
  --name TEXT                  name of the project, for title blocks and files
  --set ENTRY=VALUE            any other entry, as often as needed
  -o FILE                      NAME.gusset, or NAME.json for a bare bag.json;
                               without it bag.json goes to standard output
  --force                      replace FILE if it exists

A LENGTH is in millimetres unless it has a unit: 240, 24cm, "9 1/2 in".
What is not given takes its usual value. ENTRY is a name from bag.json:

`

// entryHelp lists the entries that --set takes.
func entryHelp() string {
	var list strings.Builder
	for _, field := range bag.Fields() {
		values := field.Range().String()
		switch field.Kind() {
		case bag.Choice:
			values = strings.Join(field.Options, " | ")
		case bag.Switch:
			values = "yes | no"
		}
		fmt.Fprintf(&list, "  %-28s %s: %s\n", field.Path, field.Name(), values)
	}
	return list.String()
}

func runNew(s Streams, args []string) (int, error) {
	given := map[string]string{}
	flags := newFlags("new")
	entry := func(option, path string) {
		flags.Func(option, "", func(text string) error {
			given[path] = text
			return nil
		})
	}
	entry("width", "bag.width_mm")
	entry("gusset", "bag.gusset_mm")
	entry("height", "bag.height_mm")
	entry("height-to-flat-fold", flatFoldPath)
	flags.Func("set", "", func(text string) error {
		path, value, found := strings.Cut(text, "=")
		if !found {
			return errors.New("write ENTRY=VALUE, such as handle.kind=ribbon")
		}
		given[path] = value
		return nil
	})
	name := flags.String("name", "", "")
	out := flags.String("o", "-", "")
	force := flags.Bool("force", false, "")
	switch files, err := parse(flags, args); {
	case err != nil:
		return 0, err
	case len(files) > 0:
		return 0, fmt.Errorf("%q is not an option; the file to write goes after -o", files[0])
	}
	spec, err := specFrom(given)
	if err != nil {
		return 0, err
	}
	spec.Name, spec.Date = *name, s.Today.Format(time.DateOnly)
	if err := spec.Validate(); err != nil {
		return 0, err
	}
	return Fine, writeNew(s, spec, *out, *force)
}

// flatFoldPath stands for the height entered up to the flat-fold crease.
const flatFoldPath = "bag.height_to_flat_fold_mm"

// specFrom builds a bag from texts by entry.
func specFrom(given map[string]string) (bag.Spec, error) {
	spec := bag.Default()
	toFlatFold, alternative := given[flatFoldPath]
	for _, path := range []string{"bag.width_mm", "bag.gusset_mm", "bag.height_mm"} {
		_, named := given[path]
		if !named && !(path == "bag.height_mm" && alternative) {
			return spec, errors.New("a size is missing; give --width, --gusset and --height, in millimetres or with a unit")
		}
	}
	if _, both := given["bag.height_mm"]; both && alternative {
		return spec, errors.New("both --height and --height-to-flat-fold are given; give one of them")
	}
	delete(given, flatFoldPath)
	var complaints []error
	for _, path := range slices.Sorted(maps.Keys(given)) {
		if err := setEntry(&spec, path, given[path]); err != nil {
			complaints = append(complaints, err)
		}
	}
	if alternative {
		length, err := geometry.ParseLength(toFlatFold, geometry.Millimetre)
		if err != nil {
			complaints = append(complaints, fmt.Errorf("%s: %w", flatFoldPath, err))
		}
		spec.Body.Height = bag.HeightFromFlatFold(length, spec.Body.Gusset)
	}
	spec.Derive(func(path string) bool {
		_, found := given[path]
		return found
	})
	return spec, errors.Join(complaints...)
}

// setEntry sets one entry from text.
func setEntry(spec *bag.Spec, path, text string) error {
	field, found := bag.FieldAt(path)
	if !found {
		return fmt.Errorf("entry %q is not known; gwbatch new --help lists all entries", path)
	}
	switch field.Kind() {
	case bag.Choice:
		field.SetChoice(spec, text)
		return asError(field.CheckChoice(text))
	case bag.Switch:
		if text != "yes" && text != "no" {
			return fmt.Errorf("%s (%s) is %q; enter yes or no", path, field.Name(), text)
		}
		field.SetSwitch(spec, text == "yes")
		return nil
	}
	value, err := parseNumber(field, text)
	if err != nil {
		return fmt.Errorf("%s (%s): %w", path, field.Name(), err)
	}
	field.SetNumber(spec, value)
	return asError(field.CheckNumber(value))
}

// asError keeps a nil complaint from becoming an error that is not nil.
func asError(complaint *bag.FieldError) error {
	if complaint == nil {
		return nil
	}
	return complaint
}

func parseNumber(field *bag.Field, text string) (float64, error) {
	if field.Unit == "mm" {
		return geometry.ParseLength(text, geometry.Millimetre)
	}
	value, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil {
		return 0, fmt.Errorf("%q is not a number; enter %s", text, field.Range())
	}
	return value, nil
}

// writeNew writes the project: a container for a name that ends in .gusset, else
// bare bag.json.
func writeNew(s Streams, spec bag.Spec, path string, force bool) error {
	if path == "-" {
		return project.Encode(s.Out, spec)
	}
	if _, err := os.Lstat(path); err == nil && !force {
		return fmt.Errorf("%s exists; choose another name, or replace it with --force", path)
	} else if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if strings.HasSuffix(strings.ToLower(path), ".gusset") {
		if err := saveProject(path, spec); err != nil {
			return err
		}
	} else if err := wholefile.Write(path, func(w io.Writer) error { return project.Encode(w, spec) }); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	fmt.Fprintf(s.Err, "gwbatch new: wrote %s\n", path)
	return nil
}

// saveProject writes a container with a preview.
func saveProject(path string, spec bag.Spec) error {
	snapshot, err := document.Derive(spec)
	if err != nil {
		return err
	}
	preview, err := export.Preview(snapshot)
	if err != nil {
		return err
	}
	return project.Save(path, project.Project{Spec: spec, Preview: preview})
}
