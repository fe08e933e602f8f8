package main

import (
	"errors"
	"flag"
	"fmt"
	"strings"
)

// outsideEnv tells the tests in which folder the npm packages are and that every
// outside tool is there; see package geomtest.
const outsideEnv = "GUSSETWRIGHT_OUTSIDE"

// runTests sets up what the tests need and runs all checks. Checks that can run
// do so even when setting up failed, but then the task fails all the same: a green
// run means that every check was made that this system allows.
func runTests(m *machine, args []string) error {
	options := flag.NewFlagSet("test", flag.ContinueOnError)
	noInstall := options.Bool("no-install", false, "")
	rest, err := parse(options, args)
	if err != nil {
		return err
	}
	if err := noMore(rest); err != nil {
		return err
	}
	found := setUp(m, !*noInstall)
	if found.err != nil {
		fmt.Fprintf(m.errors, "task test: %v\nThe tests run without what is missing.\n", found.err)
	}
	checkErr := check(m, found)
	if checkErr == nil {
		checkErr = checkWindow(m)
	}
	if found.note != "" {
		fmt.Fprint(m.out, found.note)
	}
	return errors.Join(checkErr, found.err)
}

// outside is what the tests find beside Go.
type outside struct {
	folder   string // of the npm packages; empty unless all tools are there
	checkers bool   // those of Go source can be run
	note     string // what was skipped and how to change that
	err      error  // an installation that should have worked
}

// env returns the environment of the tests.
func (o outside) env() []string {
	if o.folder == "" {
		return withoutCgo
	}
	return append([]string{outsideEnv + "=" + o.folder}, withoutCgo...)
}

// setUp installs programs and npm packages, or looks whether they are there.
func setUp(m *machine, install bool) outside {
	var result outside
	needed := append(programs(), windowParts(m.system)...)
	if missing := missingOf(needed, m.has); len(missing) > 0 && install {
		if err := installPrograms(m, missing); !errors.Is(err, errCannotInstall) {
			result.err = err
		}
	}
	folder := npmFolder(m)
	npmErr := setUpNpm(m, folder, install)
	result.err = errors.Join(result.err, npmErr)
	result.err = errors.Join(result.err, result.fetchCheckers(m, install))
	missing := missingPrograms(m.has)
	switch {
	case len(missing) > 0:
		result.note = skipNote(missing, advice(m.system, m.has, missing))
	case result.err == nil && npmPresent(m, folder):
		result.folder = folder
	case result.err == nil:
		result.note = "note: the tests that need npm packages were skipped; without -no-install they are set up\n"
	}
	if !result.checkers {
		result.note += "note: gofumpt, staticcheck and govulncheck were left out; without -no-install they are fetched\n"
	}
	return result
}

// fetchCheckers gets the checkers of Go source, which nothing but a network stands in
// the way of.
func (o *outside) fetchCheckers(m *machine, install bool) error {
	if !install {
		return nil
	}
	err := fetchCheckers(m)
	o.checkers = err == nil
	return err
}

// setUpNpm installs the npm packages where there is a node to run them.
func setUpNpm(m *machine, folder string, install bool) error {
	if !install || !m.has("npm") || !m.has("node") {
		return nil
	}
	return installNpm(m, folder)
}

// check looks at the form of the source, vets it and runs the tests.
func check(m *machine, found outside) error {
	unformatted, err := unformattedFiles(m.root)
	if err != nil {
		return err
	}
	if len(unformatted) > 0 {
		return fmt.Errorf("gofmt would change these files; run gofmt -w on them:\n  %s", strings.Join(unformatted, "\n  "))
	}
	// The objects of PDF files are long lists of pairs, clearer without the names of
	// their two fields.
	if err := m.run(goTool("vet", "-composites=false", "./...")); err != nil {
		return err
	}
	if found.checkers {
		if err := checkSource(m); err != nil {
			return err
		}
	}
	return m.run(command{env: found.env(), words: []string{"go", "test", "-count=1", "./..."}})
}
