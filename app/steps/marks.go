package steps

import (
	"strings"

	"gussetwright/app/steppage"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
)

// The steps in the order of the job.
const (
	productStep = iota
	bagStep
	carryStep
	paperStep
	sheetStep
	artworkStep
	quoteStep
	filesStep
	stepCount
)

// prefixes tells which step holds the entries of each part of a project file.
var prefixes = map[string]int{
	"product": productStep, "name": bagStep, "bag": bagStep, "handle": carryStep, "cards": carryStep, "paper": paperStep,
	"sheet": sheetStep, "stock": sheetStep, "print": artworkStep, "artwork": artworkStep,
	"run": quoteStep, "price_breaks": quoteStep, "currency": quoteStep, "prices": quoteStep, "packing": quoteStep, "family": quoteStep,
}

// stepOf returns the step that holds an entry, or −1 for none.
func stepOf(path string) int {
	part, _, _ := strings.Cut(path, ".")
	part, _, _ = strings.Cut(part, "[")
	if step, known := prefixes[part]; known {
		return step
	}
	return -1
}

// worse tells whether one severity is worse than another; "" is none at all.
func worse(a, b check.Severity) bool {
	rank := map[check.Severity]int{check.Note: 1, check.Warning: 2, check.Error: 3}
	return rank[a] > rank[b]
}

// marks returns the worst that is found in each step.
func marks(spec *bag.Spec, findings []check.Finding, complaints []*bag.FieldError) [stepCount]check.Severity {
	var worst [stepCount]check.Severity
	mark := func(path string, severity check.Severity) {
		if step := stepOf(path); step >= 0 && worse(severity, worst[step]) {
			worst[step] = severity
		}
	}
	for i := range findings {
		mark(steppage.EntryOf(&findings[i], spec), findings[i].Severity)
	}
	for _, complaint := range complaints {
		mark(complaint.Path, check.Error)
	}
	return worst
}
