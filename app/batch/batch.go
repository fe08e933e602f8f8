// Package batch is the work of the program without a window: the subcommands of
// gwbatch. It reads and writes files and standard streams and nothing else.
package batch

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
	"time"
)

// The exit codes.
const (
	Fine       = 0
	BagError   = 1 // the bag has a finding of severity error
	Unreadable = 2 // bad usage, or input that cannot be read
)

// Streams are what a command reads and writes besides files, and today's date.
type Streams struct {
	In    io.Reader
	Out   io.Writer
	Err   io.Writer
	Today time.Time
}

// command is one subcommand.
type command struct {
	name    string
	summary string
	help    func() string
	run     func(s Streams, args []string) (int, error)
}

func commands() []command {
	return []command{
		{"new", "start a project from a size", func() string { return newHelp + entryHelp() }, runNew},
		{"describe", "state the bag, its blank, the sheet and the run in numbers", func() string { return describeHelp }, runDescribe},
		{"check", "say what cannot be made and what may go wrong", func() string { return checkHelp }, runCheck},
		{"sheets", "rank the usual press sheets for this bag", func() string { return sheetsHelp }, runSheets},
		{"gang", "put the sizes of a family on shared press sheets", func() string { return gangHelp }, runGang},
		{"export", "write the production files", func() string { return exportHelp + exportKindsHelp() + exportCaution }, runExport},
	}
}

const overview = `gwbatch designs paper carrier bags without a window: from the size of a bag to
the drawing of its blank, the press sheet and the numbers of the run.

Usage: gwbatch COMMAND [options] [FILE]

Commands:
%s
A first bag, from its size to its files:

  gwbatch new --width 240 --gusset 100 --height 360 -o tea.gusset
  gwbatch check tea.gusset
  gwbatch export --to tea-files tea.gusset

FILE is a project (NAME.gusset) or a bare bag.json; - reads standard input.
The size of a bag is always face width × gusset depth × standing height, in that
order. Lengths may carry a unit: 240, 24cm, "9 1/2 in".

gwbatch version states the version of the program.

Exit codes: 0 fine, 1 the bag has an error finding, 2 bad usage or unreadable
input. Ask any command for more: gwbatch COMMAND --help
`

// Run runs the command line args, without the program's name, and returns the exit
// code.
func Run(s Streams, args []string) int {
	if len(args) == 0 {
		fmt.Fprint(s.Err, help())
		return Unreadable
	}
	switch args[0] {
	case "help", "--help", "-h", "-help":
		fmt.Fprint(s.Out, help())
		return Fine
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return finish(s, c, args[1:])
		}
	}
	fmt.Fprintf(s.Err, "gwbatch: command %q is not known; choose new, describe, check, sheets, gang or export, or ask gwbatch --help\n", args[0])
	return Unreadable
}

func help() string {
	var list strings.Builder
	for _, c := range commands() {
		fmt.Fprintf(&list, "  %-9s %s\n", c.name, c.summary)
	}
	return fmt.Sprintf(overview, list.String())
}

func finish(s Streams, c command, args []string) int {
	code, err := c.run(s, args)
	switch {
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprint(s.Out, c.help())
		return Fine
	case err != nil:
		for _, line := range strings.Split(err.Error(), "\n") {
			fmt.Fprintf(s.Err, "gwbatch %s: %s\n", c.name, line)
		}
		return Unreadable
	}
	return code
}
