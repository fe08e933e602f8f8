package main

import (
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// The version of FyneApp.toml is the newest that the changes tell of.
func TestVersionAndChangesAgree(t *testing.T) {
	if _, err := readIssue(&machine{root: geomtest.Root(t)}); err != nil {
		t.Error(err)
	}
}

func TestReadIssue(t *testing.T) {
	const changes = "## 1.2.3 - 2026-12-24\n### Added\n- One thing.\n"
	for _, test := range []struct {
		name, details, changes, says string
	}{
		{"both agree", "[Details]\nID = \"x\"\nVersion = \"1.2.3\"\n", changes, ""},
		{"Windows line ends", "[Details]\r\nVersion = \"1.2.3\"\r\n", strings.ReplaceAll(changes, "\n", "\r\n"), ""},
		{"no entry yet", "[Details]\nVersion = \"1.3.0\"\n", changes, "write an entry for 1.3.0"},
		{"the version of something else", "[Other]\nVersion = \"1.2.3\"\n", changes, "find the version"},
		{"no version", "[Details]\n", changes, "find the version"},
		{"no changes", "[Details]\nVersion = \"1.2.3\"\n", "", "there is no version"},
	} {
		p := pretend(t, "linux", false)
		writeFile(t, p.path("FyneApp.toml"), test.details)
		writeFile(t, p.path("assets", "changes.md"), test.changes)
		got, err := readIssue(p.machine)
		if test.says != "" {
			if err == nil || !strings.Contains(err.Error(), test.says) {
				t.Errorf("%s: got %v, want %q", test.name, err, test.says)
			}
			continue
		}
		if err != nil || got.version != "1.2.3" || got.date.Format("2 January 2006") != "24 December 2026" || got.numbers() != "1,2,3,0" {
			t.Errorf("%s: got %+v, %v", test.name, got, err)
		}
	}
}
