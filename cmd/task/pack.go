package main

import (
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// packing is what the user asked of the task package.
type packing struct{ install, twice, try bool }

func packingOf(args []string) (packing, error) {
	options := flag.NewFlagSet("package", flag.ContinueOnError)
	noInstall := options.Bool("no-install", false, "")
	twice := options.Bool("twice", false, "")
	try := options.Bool("try", false, "")
	rest, err := parse(options, args)
	if err != nil {
		return packing{}, err
	}
	return packing{!*noInstall, *twice, *try}, noMore(rest)
}

// buildPackages builds gwbatch for every platform, and the archives with the window
// that can be built here. What is left out is said, and fails the task where it should
// have worked.
func buildPackages(m *machine, args []string) error {
	asked, err := packingOf(args)
	if err != nil {
		return err
	}
	stamped, err := readIssue(m)
	if err != nil {
		return err
	}
	setUpErr := setUpPackaging(m, asked)
	y := yard{m: m, issue: stamped}
	files, err := y.make()
	if err != nil {
		return err
	}
	if err := y.list(files); err != nil {
		return err
	}
	if asked.twice {
		if err := y.compareAgain(files); err != nil {
			return err
		}
	}
	if asked.try {
		if err := y.try(); err != nil {
			return err
		}
	}
	return setUpErr
}

// setUpPackaging installs what is missing. Where that is left to the user, the parts
// that cannot be built say what they need.
func setUpPackaging(m *machine, asked packing) error {
	var needed []program
	for _, f := range forms() {
		needed = append(needed, f.parts()...)
	}
	if asked.try {
		needed = append(needed, tryParts()...)
	}
	missing := missingOf(needed, m.has)
	if !canPack(m) || !asked.install || len(missing) == 0 {
		return nil
	}
	err := installPrograms(m, missing)
	if errors.Is(err, errCannotInstall) {
		return nil
	}
	if err != nil {
		fmt.Fprintf(m.errors, "task package: %v\nWhat can be built without it is built.\n", err)
	}
	return err
}

// list says what was built, with the sums by which a user can tell that a file
// arrived whole. They are written to a file too.
func (y yard) list(files []string) error {
	var sums strings.Builder
	fmt.Fprintf(y.m.out, "\nGussetwright %s, built in %s:\n", y.version, y.m.path("dist"))
	for _, name := range files {
		data, err := os.ReadFile(y.m.path("dist", name))
		if err != nil {
			return fmt.Errorf("look at what was built: %w", err)
		}
		sum := sha256.Sum256(data)
		fmt.Fprintf(y.m.out, "  %-42s %5.1f MB  %x…\n", name, float64(len(data))/1e6, sum[:6])
		fmt.Fprintf(&sums, "%x  %s\n", sum, name)
	}
	name := "gussetwright-" + y.version + "-sha256.txt"
	if err := os.WriteFile(y.m.path("dist", name), []byte(sums.String()), readable); err != nil {
		return fmt.Errorf("write the sums of the files: %w", err)
	}
	fmt.Fprintf(y.m.out, "The sums stand in whole in %s.\n", filepath.Join("dist", name))
	for _, note := range y.leftOut() {
		fmt.Fprintln(y.m.out, "note:", note)
	}
	return nil
}
