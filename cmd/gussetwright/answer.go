package main

import (
	"fmt"
	"io"

	"gussetwright/app/release"
)

const usage = `Gussetwright is the window in which paper carrier bags are designed.

Usage: gussetwright [FILE]

FILE is a project (NAME.gusset) to open. Options:
  --version   say which version this is
  --help      say this

To work without a window use gwbatch.
`

// answer says what can be said without a window, and tells whether that was asked.
// Windows gives a program with a window no console to say it on; there the words
// arrive only where they are led into a file or another program.
func answer(w io.Writer, args []string) bool {
	if len(args) != 1 {
		return false
	}
	switch args[0] {
	case "--version", "-version":
		fmt.Fprintln(w, "gussetwright", release.Version())
	case "--help", "-help", "-h":
		fmt.Fprint(w, usage)
	default:
		return false
	}
	return true
}
