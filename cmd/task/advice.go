package main

import (
	"fmt"
	"slices"
	"strings"
)

// advice says, a line each, how to install the missing programs on the system.
// The first manager that the machine has is named; where there is none, all of
// the system's are.
func advice(system string, has func(string) bool, missing []program) []string {
	known := managers(system)
	chosen := known
	for i := range known {
		if has(known[i].command) {
			chosen = known[i : i+1]
			break
		}
	}
	var lines []string
	for _, m := range chosen {
		lines = append(lines, m.advice(missing)...)
	}
	return lines
}

// advice returns the command of the manager for the programs that it knows, pipx
// for ezdxf, and what is left to the reader.
func (m manager) advice(missing []program) []string {
	var packages, unknown, lines []string
	needsPipx := false
	for _, p := range missing {
		name, known := m.names[p.command]
		switch {
		case known && !slices.Contains(packages, name):
			packages = append(packages, name)
		case !known && p.command == "ezdxf":
			needsPipx = true
		case !known:
			unknown = append(unknown, p.command)
		}
	}
	if len(packages) > 0 {
		lines = append(lines, m.install+" "+strings.Join(packages, " "))
	}
	if needsPipx {
		lines = append(lines, pipx)
	}
	if len(unknown) > 0 {
		lines = append(lines, fmt.Sprintf("%s has no package known to us for %s: see the makers' pages",
			m.command, strings.Join(unknown, ", ")))
	}
	return lines
}

// skipNote is the last word of a test run for which programs were missing.
func skipNote(missing []program, lines []string) string {
	return fmt.Sprintf("note: the tests that need %s were skipped. To run them too:\n  %s\n",
		strings.Join(commandsOf(missing), ", "), strings.Join(lines, "\n  "))
}
