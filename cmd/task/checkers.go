package main

import (
	"fmt"
	"net/url"
	"path/filepath"
	"strings"
	"time"
)

// The checkers of other makers. The go command fetches and builds them, so they need no
// installation; each is pinned, so that a check that passes today passes tomorrow.
const (
	formatter   = "mvdan.cc/gofumpt@v0.12.0"
	linter      = "honnef.co/go/tools/cmd/staticcheck@v0.8.2"
	holeChecker = "golang.org/x/vuln/cmd/govulncheck@v1.9.0"
	// holeReports is the module with the reports on known vulnerabilities. It is pinned
	// like the rest and asks no service; renew it before a release.
	holeReports = "golang.org/x/vulndb@v0.0.0-20261105234957-e22db6528018"
)

// releaseGo is the Go that released programs are built with: the oldest patch of ours
// whose standard library has no hole that the reports know and that we reach.
const releaseGo = "go1.26.10"

// checkerModules returns the modules of the checkers, with their versions.
func checkerModules() []string {
	var modules []string
	for _, program := range []string{formatter, linter, holeChecker, holeReports} {
		path, version, _ := strings.Cut(program, "@")
		path, _, _ = strings.Cut(path, "/cmd/")
		modules = append(modules, path+"@"+version)
	}
	return modules
}

// fetchCheckers puts the checkers into the module cache.
func fetchCheckers(m *machine) error {
	words := append([]string{"mod", "download"}, checkerModules()...)
	if err := m.run(goTool(words...)); err != nil {
		return fmt.Errorf("fetch the checkers: %w\nThey come from the Go module proxy; without a network use -no-install", err)
	}
	return nil
}

// checkSource runs the checkers over the whole module, the window included where it
// can be built.
func checkSource(m *machine) error {
	if err := checkForm(m); err != nil {
		return err
	}
	env := withoutCgo
	if m.system == "linux" && len(missingOf(windowBuildParts(), m.has)) == 0 {
		env = withCgo
	}
	// Its own choice of a cache needs a home folder, which not every machine gives.
	env = append([]string{"STATICCHECK_CACHE=" + m.path("bin", "staticcheck")}, env...)
	if err := m.run(command{env: env, words: []string{"go", "run", linter, "./..."}}); err != nil {
		return err
	}
	return checkHoles(m)
}

// checkForm fails when gofumpt would change a file.
func checkForm(m *machine) error {
	list, err := m.read(goTool("run", formatter, "-l", "."))
	if err != nil {
		return err
	}
	if files := strings.Fields(list); len(files) > 0 {
		return fmt.Errorf("gofumpt would change these files; run go run %s -w %s", formatter, strings.Join(files, " "))
	}
	return nil
}

// checkHoles fails when our code reaches a known vulnerability in a dependency or in
// the standard library of the Go that releases are built with. It leaves out what only
// the window with cgo takes in, the drivers of the screen: with another Go than that of
// the machine, their C would be compiled for minutes.
func checkHoles(m *machine) error {
	module, _, _ := strings.Cut(holeReports, "@")
	folder, err := m.read(goTool("list", "-m", "-f", "{{.Dir}}", holeReports))
	if err != nil {
		return err
	}
	reports := fileURL(filepath.Join(strings.TrimSpace(folder), "data", "osv"))
	err = m.run(command{
		env:   append([]string{"GOTOOLCHAIN=" + releaseGo}, withoutCgo...),
		words: []string{"go", "run", holeChecker, "-db", reports, "./..."},
	})
	if err != nil {
		return fmt.Errorf("%w\nRenew the module that it names in go.mod, or releaseGo in cmd/task", err)
	}
	fmt.Fprintf(m.out, "note: vulnerabilities as known on %s (%s)\n", reportDay(), module)
	return nil
}

// reportDay returns the day of the reports, which stands in the version of the module.
func reportDay() string {
	parts := strings.Split(holeReports, "-")
	day, err := time.Parse("20060102150405", parts[len(parts)-2])
	if err != nil {
		return "an unknown day"
	}
	return day.Format("2 January 2006")
}

// fileURL returns the address of a file or folder on this machine.
func fileURL(path string) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // before the letter of a drive
	}
	return (&url.URL{Scheme: "file", Path: slashed}).String()
}
