package batch

import (
	"encoding/json"
	"flag"
	"io"

	"gussetwright/app/describe"
	"gussetwright/app/document"
)

// openToLook reads the options of a command that only looks at a bag, and opens it.
// flags may have further options.
func openToLook(s Streams, flags *flag.FlagSet, args []string) (snapshot *document.Snapshot, asJSON bool, err error) {
	flags.BoolVar(&asJSON, "json", false, "")
	path, err := parseOne(flags, args)
	if err != nil {
		return nil, false, err
	}
	_, snapshot, err = load(s, path)
	return snapshot, asJSON, err
}

const describeHelp = `gwbatch describe states a bag in numbers: size, blank with panels and lines, the
layout on its press sheet, what the run takes, and all findings.

Usage: gwbatch describe [--json] [--fold] FILE

  --json   for programs: every panel, line, hole and glue area with coordinates in
           mm, x to the right and y up from the lower left corner of the blank,
           seen from the print side
  --fold   also fold the bag and measure each stage, which takes a moment: how much
           the paper would be stretched, how deep layers would pass through each
           other, and how far a corner goes from one of 100 steps to the next
`

func runDescribe(s Streams, args []string) (int, error) {
	flags := newFlags("describe")
	withFold := flags.Bool("fold", false, "")
	snapshot, asJSON, err := openToLook(s, flags, args)
	if err != nil {
		return 0, err
	}
	description := describe.Describe(snapshot)
	if *withFold {
		description.Fold = describe.FoldOf(snapshot)
	}
	if asJSON {
		return verdict(snapshot), writeJSON(s.Out, description)
	}
	return verdict(snapshot), description.Text(s.Out)
}

const checkHelp = `gwbatch check says what about a bag cannot be made (error), is likely to go wrong
(warning) or is to be kept in mind (note), each with a remedy.

Usage: gwbatch check [--json] FILE

  --json   for programs: code, message, remedy and the place on the blank in mm

Exits with 1 when there is an error finding. The checks are common practice; they
replace neither the die-maker's look at the drawing nor a white sample. Loads are
confirmed by a sample test only.
`

func runCheck(s Streams, args []string) (int, error) {
	snapshot, asJSON, err := openToLook(s, newFlags("check"), args)
	if err != nil {
		return 0, err
	}
	findings := describe.FindingsOf(snapshot.Findings)
	if asJSON {
		return verdict(snapshot), writeJSON(s.Out, struct {
			Name     string             `json:"name"`
			Findings []describe.Finding `json:"findings"`
		}{snapshot.Spec.Name, findings})
	}
	describe.FindingsText(s.Out, findings)
	return verdict(snapshot), nil
}

func writeJSON(w io.Writer, value any) error {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(value)
}
