package batch

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/check"
)

// newFlags returns an empty set of options that reports its errors to the caller.
func newFlags(name string) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	return flags
}

// parse reads options and file names in any order and returns the file names.
func parse(flags *flag.FlagSet, args []string) ([]string, error) {
	var files []string
	for {
		if err := flags.Parse(args); err != nil {
			if errors.Is(err, flag.ErrHelp) {
				return nil, err
			}
			return nil, fmt.Errorf("%w; ask gwbatch %s --help", err, flags.Name())
		}
		rest := flags.Args()
		if len(rest) == 0 {
			return files, nil
		}
		files = append(files, rest[0])
		args = rest[1:]
	}
}

// parseOne is parse for commands that take one file.
func parseOne(flags *flag.FlagSet, args []string) (string, error) {
	files, err := parse(flags, args)
	if err != nil {
		return "", err
	}
	switch len(files) {
	case 0:
		return "", fmt.Errorf("no FILE is named; name a project, a bag.json, or - for standard input")
	case 1:
		return files[0], nil
	}
	return "", fmt.Errorf("%d files are named (%q and %q …); name one", len(files), files[0], files[1])
}

// load opens the project at path, or on standard input for "-", and derives all
// that follows from it. Notes about the file go to the error stream.
func load(s Streams, path string) (project.Project, *document.Snapshot, error) {
	var opened project.Project
	var err error
	if path == "-" {
		opened, err = project.ReadFrom(s.In)
	} else {
		opened, err = project.Open(path)
	}
	if err != nil {
		return project.Project{}, nil, err
	}
	for _, note := range opened.Notes {
		fmt.Fprintln(s.Err, "gwbatch: note:", note)
	}
	snapshot, err := document.DeriveWithArt(context.Background(), opened.Spec, opened.Files)
	if err != nil {
		return project.Project{}, nil, err
	}
	return opened, snapshot, nil
}

// verdict is the exit code that the findings ask for.
func verdict(snapshot *document.Snapshot) int {
	if check.HasError(snapshot.Findings) {
		return BagError
	}
	return Fine
}
