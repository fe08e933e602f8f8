package main

import (
	"errors"
	"flag"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"
)

// How long each benchmark runs, and how long those of a package may take.
const (
	benchTime     = 2 * time.Second
	benchPatience = 30 * time.Minute
)

// bench measures. Tests replace its functions.
type bench struct {
	m        *machine
	rows     []row
	markdown bool
	// run runs a command and returns what it printed, also where it failed.
	run func(command) (string, error)
	// watch starts the window and tells how that went.
	watch func(m *machine) (results, error)
}

// runBenchmarks measures all figures of the table and prints it.
func runBenchmarks(m *machine, args []string) error {
	b := bench{m: m, run: func(c command) (string, error) { return outputHere(m, c) }, watch: watchWindows}
	if err := b.read(args); err != nil {
		return err
	}
	return b.measure()
}

// read takes the options.
func (b *bench) read(args []string) error {
	options := flag.NewFlagSet("bench", flag.ContinueOnError)
	only := options.String("only", "", "")
	options.BoolVar(&b.markdown, "markdown", false, "")
	rest, err := parse(options, args)
	if err != nil {
		return err
	}
	if err := noMore(rest); err != nil {
		return err
	}
	pattern, err := regexp.Compile("(?i)" + *only)
	if err != nil {
		return usageError{fmt.Sprintf("-only %s: %v", *only, err)}
	}
	for _, r := range benchRows() {
		if pattern.MatchString(r.group + ": " + r.what + " " + r.from.String()) {
			b.rows = append(b.rows, r)
		}
	}
	if len(b.rows) == 0 {
		return usageError{fmt.Sprintf("-only %s: no row of the table is like that", *only)}
	}
	return nil
}

// measure measures everything in turn, so that nothing is measured beside another, and
// prints the table. What cannot be measured does not keep the rest from it.
func (b *bench) measure() error {
	described := describeMachine(b.m)
	fmt.Fprintf(b.m.errors, "%s\n%s", described.line(), described.warning())
	found, failures := results{}, []error(nil)
	folders := benchFolders(b.rows)
	for i, folder := range folders {
		fmt.Fprintf(b.m.errors, "%2d of %d  %s\n", i+1, len(folders), folder)
		got, err := b.measureFolder(folder)
		if err != nil {
			fmt.Fprintln(b.m.errors, "note:", err)
			failures = append(failures, err)
		}
		found.add(folder, got)
	}
	sheet := tableOf(b.rows, found)
	if b.markdown {
		fmt.Fprintf(b.m.out, "%s\n\n%s", described.line(), sheet.markdown())
	} else {
		fmt.Fprintf(b.m.out, "\n%s\n%s\n%s", described.line(), described.warning(), sheet.plain())
	}
	return errors.Join(failures...)
}

func (b *bench) measureFolder(folder string) (results, error) {
	if folder == windowFolder {
		return b.watch(b.m)
	}
	output, err := b.run(benchCommand(folder, b.rows))
	if err != nil || strings.Contains(output, "--- SKIP") {
		fmt.Fprint(b.m.errors, output)
	}
	return readResults(output), err
}

// benchFolders returns the folders that the rows need, in their order.
func benchFolders(rows []row) []string {
	var folders []string
	for _, r := range rows {
		if r.from.folder != "" && !slices.Contains(folders, r.from.folder) {
			folders = append(folders, r.from.folder)
		}
	}
	return folders
}

// benchCommand returns the command that runs the benchmarks of a folder that the rows
// name, on one processor.
func benchCommand(folder string, rows []row) command {
	var names []string
	for _, r := range rows {
		for _, o := range r.origins() {
			name, _, _ := strings.Cut(o.benchmark, "/")
			if o.folder == folder && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	pattern := "^Benchmark(" + strings.Join(names, "|") + ")$"
	return goTool("test", "-run", "^$", "-bench", pattern, "-benchmem", "-cpu", "1",
		"-benchtime", benchTime.String(), "-timeout", benchPatience.String(), "./"+folder)
}

// outputHere runs a command and returns what it printed, also where it failed.
func outputHere(m *machine, c command) (string, error) {
	fmt.Fprintln(m.errors, "»", c)
	output, err := prepare(m.root, c).Output()
	if err != nil {
		err = fmt.Errorf("%s: %w", c, err)
	}
	return string(output), err
}
