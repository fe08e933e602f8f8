package main

import (
	"strings"
	"testing"
)

func TestComputerIsNamed(t *testing.T) {
	c := computer{processor: "Slow 486", cores: 4, system: "Some System 3", toolchain: "go1.26.8", load: 0.25, loadKnown: true}
	for _, words := range []string{"Slow 486", "4 cores", "Some System 3", "go1.26.8", "load 0.25"} {
		if !strings.Contains(c.line(), words) {
			t.Errorf("%q lacks %q", c.line(), words)
		}
	}
	for _, test := range []struct {
		load   float64
		known  bool
		warned bool
	}{{0.25, true, false}, {1.9, true, false}, {2, true, true}, {8, true, true}, {8, false, false}} {
		c.load, c.loadKnown = test.load, test.known
		if got := c.warning(); (got != "") != test.warned {
			t.Errorf("load %g: warning %q", test.load, got)
		}
	}
}

func TestComputerThatTellsNothing(t *testing.T) {
	p := pretend(t, "plan9", true)
	p.broken = "GOVERSION"
	if got := describeMachine(p.machine).line(); !strings.Contains(got, "cores, plan9, ") || strings.Contains(got, "load") {
		t.Errorf("got %q", got)
	}
}

// The lines are those of proc_cpuinfo(5), os-release(5) and proc_loadavg(5).
func TestReadTheMachine(t *testing.T) {
	for _, test := range []struct{ text, name, mark, want string }{
		{"processor\t: 0\nmodel name\t: Slow 486 @ 33 MHz\n", "model name", ":", "Slow 486 @ 33 MHz"},
		{"NAME=\"Some\"\nPRETTY_NAME=\"Some System 3\"\n", "PRETTY_NAME", "=", `"Some System 3"`},
		{"model names: x\n", "model name", ":", ""},
		{"", "model name", ":", ""},
	} {
		if got := valueBehind(test.text, test.name, test.mark); got != test.want {
			t.Errorf("%q: got %q, want %q", test.text, got, test.want)
		}
	}
	if load, known := loadOf("0.20 0.18 0.12 1/80 11206\n"); load != 0.2 || !known {
		t.Errorf("load %g, %v", load, known)
	}
	if _, known := loadOf(""); known {
		t.Error("nothing is known to be a load")
	}
}
