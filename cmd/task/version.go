package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"gussetwright/app/release"
)

// issue is what a package is stamped with.
type issue struct {
	version string    // as in 1.2.3
	date    time.Time // of every file in an archive
}

// readIssue reads the version from FyneApp.toml, where alone it is set, and the day of
// the release from the list of changes, whose newest entry must be for that version.
func readIssue(m *machine) (issue, error) {
	version, err := versionOf(m.path("FyneApp.toml"))
	if err != nil {
		return issue{}, err
	}
	text, err := os.ReadFile(m.path("assets", "changes.md"))
	if err != nil {
		return issue{}, fmt.Errorf("find the day of the release: %w", err)
	}
	changes, err := release.Parse(string(text))
	if err != nil {
		return issue{}, fmt.Errorf("assets/changes.md: %w", err)
	}
	if newest := changes[0].Version; newest != version {
		return issue{}, fmt.Errorf("FyneApp.toml says version %s, the newest entry of assets/changes.md %s; write an entry for %s", version, newest, version)
	}
	return issue{version: version, date: changes[0].Date}, nil
}

// versionOf returns the version that stands in the section Details of a FyneApp.toml.
func versionOf(path string) (string, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return "", fmt.Errorf("find the version: %w", err)
	}
	section := ""
	for _, line := range strings.Split(string(text), "\n") {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "[") {
			section = line
		}
		key, value, _ := strings.Cut(line, "=")
		if section == "[Details]" && strings.TrimSpace(key) == "Version" {
			return strings.Trim(strings.TrimSpace(value), `"`), nil
		}
	}
	return "", fmt.Errorf("find the version in %s: %w", path, errors.New(`no line Version = "1.2.3" below [Details]`))
}

// stamp returns the linker's option that writes the version into a program.
func (i issue) stamp() string { return "-X gussetwright/app/release.version=" + i.version }

// numbers returns the version as Windows counts it, in four numbers.
func (i issue) numbers() string { return strings.ReplaceAll(i.version, ".", ",") + ",0" }
