package batch

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"gussetwright/app/describe"
	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/practice"
	"gussetwright/geometry/check"
)

const exportHelp = `gwbatch export writes the production files of a bag.

Usage: gwbatch export --to DIR [--only LIST] [--date YYYY-MM-DD] [--practice-paper NAME] FILE

  --to DIR      folder for the files; it is made where it is missing
  --only LIST   some kinds only, with commas between: dieline,svg
  --date DAY    date of the title block; else the project's own, else today
  --practice-paper NAME
                paper of practice blanks: A4, A3, Letter or Tabloid; else A4

Files are named after the project file; from standard input, after the project:

`

const exportCaution = `
Every drawing is at true size in millimetres, seen from the print side. A bag with an
error finding is drawn all the same, with exit code 1. Have the die-maker check
the drawing and make a white sample before cutting a die.
`

func exportKindsHelp() string {
	var list strings.Builder
	for _, kind := range export.Kinds() {
		endings := kind.Endings
		if kind.PieceEnding != "" {
			endings = append(slices.Clone(endings), kind.PieceEnding)
		}
		fmt.Fprintf(&list, "  %-9s NAME%-13s %s\n", kind.Name, endings[0], kind.Help)
		for _, ending := range endings[1:] {
			fmt.Fprintf(&list, "  %-9s NAME%s\n", "", ending)
		}
	}
	return list.String()
}

func runExport(s Streams, args []string) (int, error) {
	flags := newFlags("export")
	to := flags.String("to", "", "")
	only := flags.String("only", "", "")
	day := flags.String("date", "", "")
	paperName := flags.String("practice-paper", "", "")
	path, err := parseOne(flags, args)
	if err != nil {
		return 0, err
	}
	if *to == "" {
		return 0, fmt.Errorf("no folder is named; name one with --to DIR")
	}
	kinds, err := export.Choose(*only)
	if err != nil {
		return 0, fmt.Errorf("--only: %w", err)
	}
	paper, err := practice.PaperNamed(*paperName)
	if err != nil {
		return 0, fmt.Errorf("--practice-paper: %w", err)
	}
	opened, snapshot, err := load(s, path)
	if err != nil {
		return 0, err
	}
	date, err := dateOf(*day, opened.Spec.Date, s.Today)
	if err != nil {
		return 0, err
	}
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if path == "-" {
		name = opened.Spec.Name
	}
	quiet := func(float64, string) {}
	job := export.Job{Folder: *to, Project: name, Snapshot: snapshot, Date: date, Kinds: kinds, PracticePaper: paper}
	paths, err := export.Write(context.Background(), job, quiet)
	if err != nil {
		return 0, err
	}
	for _, written := range paths {
		fmt.Fprintln(s.Out, written)
	}
	tellOfExport(s, kinds, snapshot)
	return verdict(snapshot), nil
}

// tellOfExport says what was not written, and what is wrong with what was.
func tellOfExport(s Streams, kinds []export.Kind, snapshot *document.Snapshot) {
	for _, kind := range kinds {
		if why := kind.Lacking(snapshot); why != nil && (!kind.OfFamily || len(snapshot.Spec.Family) > 0) {
			fmt.Fprintf(s.Err, "gwbatch: note: no %s is written: %s\n", kind.Name, why)
		}
	}
	if check.HasError(snapshot.Findings) {
		describe.FindingsText(s.Err, describe.FindingsOf(snapshot.Findings))
	}
}

// dateOf returns the first day that is given: by option, by the project, today.
func dateOf(option, spec string, today time.Time) (time.Time, error) {
	for _, day := range []string{option, spec} {
		if day == "" {
			continue
		}
		date, err := time.Parse(time.DateOnly, day)
		if err != nil {
			return time.Time{}, fmt.Errorf("date %q is not a day; write it as YYYY-MM-DD, such as 2026-03-31", day)
		}
		return date, nil
	}
	return today, nil
}
