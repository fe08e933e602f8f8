package steps

import (
	"testing"

	"gussetwright/app/document"
)

// drags returns states as a drag of a panel edge makes them: every one with
// another width, gusset and height.
func drags(b *testing.B) []document.State {
	b.Helper()
	doc := document.New()
	states := make([]document.State, 100)
	for i := range states {
		spec := doc.State().Spec
		move := float64(i)
		spec.Body.Width, spec.Body.Gusset, spec.Body.Height = 240+move, 90+move/2, 360-move
		doc.Drag(spec)
		states[i] = doc.State()
	}
	return states
}

// BenchmarkRefresh is what the steps take of each step of a drag.
func BenchmarkRefresh(b *testing.B) {
	states := drags(b)
	for step, name := range []string{"product", "bag", "carry", "paper", "sheet", "artwork", "quote", "files"} {
		b.Run(name, func(b *testing.B) {
			panel, window := newDesk(b)
			panel.Select(step)
			window.Canvas().Capture()
			i := 0
			b.ReportAllocs()
			for b.Loop() {
				panel.show(states[i%len(states)])
				i++
			}
		})
	}
}

// BenchmarkRefreshUnchanged is what they take of a change elsewhere.
func BenchmarkRefreshUnchanged(b *testing.B) {
	panel, window := newDesk(b)
	panel.Select(bagStep)
	window.Canvas().Capture()
	state := panel.bench.Doc.State()
	b.ReportAllocs()
	for b.Loop() {
		panel.show(state)
	}
}

// BenchmarkSelect is the change to another step.
func BenchmarkSelect(b *testing.B) {
	panel, window := newDesk(b)
	for step := range stepCount {
		panel.Select(step)
		window.Canvas().Capture()
	}
	i := 0
	b.ReportAllocs()
	for b.Loop() {
		panel.Select(i % stepCount)
		i++
	}
}
