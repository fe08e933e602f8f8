// Command task does the chores of a contributor on any system: run, test,
// bench, fuzz, soak, golden and package. It needs nothing but Go.
//
//	go run ./cmd/task --help
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"slices"
)

// Exit codes of our own; a command that fails passes its own code on.
const (
	exitFine   = 0
	exitFailed = 1
	exitUsage  = 2
)

func main() {
	here, err := thisMachine()
	if err != nil {
		fmt.Fprintln(os.Stderr, "task:", err)
		os.Exit(exitFailed)
	}
	os.Exit(do(here, os.Args[1:]))
}

// do carries out the task that the arguments name and returns the exit code.
func do(m *machine, args []string) int {
	if len(args) == 0 {
		writeHelp(m.errors)
		return exitUsage
	}
	name, rest := args[0], args[1:]
	if isHelp(name) {
		if len(rest) == 0 {
			writeHelp(m.out)
			return exitFine
		}
		name, rest = rest[0], []string{"--help"}
	}
	chosen, known := taskNamed(name)
	if !known {
		fmt.Fprintf(m.errors, "task: %q is no task; choose %s\n", name, nameList())
		return exitUsage
	}
	if slices.ContainsFunc(rest, func(word string) bool { return word != "help" && isHelp(word) }) {
		fmt.Fprintf(m.out, "go run ./cmd/task %s\n\n%s", chosen.usage, chosen.help)
		return exitFine
	}
	return exitCode(m.errors, chosen, chosen.do(m, rest))
}

func isHelp(word string) bool {
	return word == "help" || word == "--help" || word == "-help" || word == "-h"
}

// usageError is a complaint about the arguments of a task.
type usageError struct{ complaint string }

func (e usageError) Error() string { return e.complaint }

// exitCode writes the error and returns the code that stands for it. The code of
// a command that failed is handed on unchanged.
func exitCode(w io.Writer, t task, err error) int {
	if err == nil {
		return exitFine
	}
	fmt.Fprintf(w, "task %s: %v\n", t.name, err)
	var usage usageError
	if errors.As(err, &usage) {
		fmt.Fprintf(w, "usage: go run ./cmd/task %s\n", t.usage)
		return exitUsage
	}
	var failed *exec.ExitError
	if errors.As(err, &failed) && failed.ExitCode() > 0 {
		return failed.ExitCode()
	}
	return exitFailed
}

// parse reads the options of a task; what is left over is returned.
func parse(options *flag.FlagSet, args []string) ([]string, error) {
	options.SetOutput(io.Discard)
	if err := options.Parse(args); err != nil {
		return nil, usageError{err.Error()}
	}
	return options.Args(), nil
}

// noMore refuses arguments that a task does not take.
func noMore(args []string) error {
	if len(args) > 0 {
		return usageError{fmt.Sprintf("%q is one argument too many", args[0])}
	}
	return nil
}
