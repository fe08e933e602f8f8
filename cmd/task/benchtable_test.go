package main

import (
	"strings"
	"testing"
)

func TestFigureText(t *testing.T) {
	for _, test := range []struct {
		value  float64
		metric string
		want   string
	}{
		{0.4, times, "0.400 ns"},
		{6012, times, "6.01 µs"},
		{199_960, times, "200 µs"},
		{7_500_000, times, "7.50 ms"},
		{1.23456e9, times, "1.23 s"},
		{16, "p95-ms", "16 ms"},
		{16.04, "p95-ms", "16.0 ms"},
		{2350, "worst-ms", "2.35 s"},
		{0.0064, "median-ms", "6.40 µs"},
		{251.3, "resident-MB", "251 MB"},
		{0.394, "file-MB", "394 kB"},
		{1.0436, "strain-%", "1.04 %"},
		{0, "fewer-sheets", "0"},
		{14882, "blanks", "14882"},
		{56, "allocs/op", "56"},
		{1.081, "step/mean", "1.08"},
	} {
		if got := figureText(test.value, test.metric); got != test.want {
			t.Errorf("%g %s: got %q, want %q", test.value, test.metric, got, test.want)
		}
	}
}

func TestVerdictOfAnAim(t *testing.T) {
	here := of("sheet Lay", times)
	for _, test := range []struct {
		name     string
		row      row
		value    float64
		measured bool
		want     string
	}{
		{"below", row{from: here, aim: under("", 10)}, 9.9, true, saidMet},
		{"under means less", row{from: here, aim: under("", 10)}, 10, true, saidNotMet},
		{"at most means no more", row{from: here, aim: atMost("", 10)}, 10, true, saidMet},
		{"above", row{from: here, aim: atMost("", 10)}, 10.1, true, saidNotMet},
		{"none at all", row{from: here, aim: atMost("", 0)}, 0, true, saidMet},
		{"no number", row{from: here, aim: aim{words: "near zero"}}, 90, true, ""},
		{"no aim", row{from: here}, 90, true, ""},
		{"not measured", row{from: here, aim: under("", 10)}, 0, false, saidMissing},
		{"measured elsewhere", row{from: origin{metric: "go run"}, aim: under("", 10)}, 0, false, "measured by that command"},
	} {
		if got := test.row.verdict(test.value, test.measured); got != test.want {
			t.Errorf("%s: got %q, want %q", test.name, got, test.want)
		}
	}
}

func TestBesideInOtherUnits(t *testing.T) {
	r := row{from: of("page Render", times), beside: []peer{{"pdftoppm", of("page Render", "pdftoppm-ms")}, {"another", of("page Other", times)}}}
	found := results{"page Render": {times: 100e6, "pdftoppm-ms": 250}}
	if got, want := r.besideText(found), "pdftoppm: 250 ms (2.50 × ours); another: not measured"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Every column begins at the same place in every line.
func TestPlainTableIsAligned(t *testing.T) {
	rows := []row{
		{group: "a", what: "körper × 2", from: of("x Lay", times)},
		{group: "b", what: "long words of a row", from: of("y Lay", times)},
	}
	text := tableOf(rows, results{"x Lay": {times: 5000}, "y Lay": {times: 123}}).plain()
	var at []int
	for line := range strings.Lines(text) {
		for _, figure := range []string{"figure  ", "5 µs", "123 ns"} {
			if before, _, found := strings.Cut(line, figure); found {
				at = append(at, len([]rune(before)))
			}
		}
	}
	if len(at) != 3 || at[0] != at[1] || at[1] != at[2] {
		t.Errorf("figures begin at %v in\n%s", at, text)
	}
	for _, group := range []string{"\na\n", "\nb\n"} {
		if !strings.Contains(text, group) {
			t.Errorf("no heading %q in\n%s", group, text)
		}
	}
}
