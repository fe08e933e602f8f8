package main

import (
	"strings"
	"testing"

	"gussetwright/app/release"
)

func TestAnswer(t *testing.T) {
	for _, test := range []struct {
		args []string
		want string // empty where the window is to open
	}{
		{nil, ""},
		{[]string{"tea.gusset"}, ""},
		{[]string{"--version", "tea.gusset"}, ""},
		{[]string{"--version"}, "gussetwright " + release.Version() + "\n"},
		{[]string{"--help"}, "Usage: gussetwright [FILE]"},
	} {
		var said strings.Builder
		answered := answer(&said, test.args)
		if answered != (test.want != "") || !strings.Contains(said.String(), test.want) || !answered && said.Len() > 0 {
			t.Errorf("%q: answered %v with %q, want %q", test.args, answered, &said, test.want)
		}
	}
}
