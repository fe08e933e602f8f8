package main

import (
	"errors"
	"fmt"
	"io"
	"os/exec"
	"strings"
	"testing"
)

func TestHelpTeachesEveryTask(t *testing.T) {
	p := pretend(t, "linux", true)
	if code := do(p.machine, []string{"--help"}); code != exitFine {
		t.Errorf("--help ends with code %d", code)
	}
	for _, task := range tasks() {
		if !strings.Contains(p.out.String(), "  "+task.name+" ") {
			t.Errorf("the overview does not name %s:\n%s", task.name, &p.out)
		}
		for _, args := range [][]string{{task.name, "--help"}, {"help", task.name}} {
			one := pretend(t, "linux", true)
			if code := do(one.machine, args); code != exitFine || !strings.Contains(one.out.String(), task.help) {
				t.Errorf("%v: code %d, printed %q", args, code, one.out.String())
			}
			if len(one.ran) > 0 {
				t.Errorf("%v ran %v", args, one.ran)
			}
		}
		if !strings.HasPrefix(task.usage, task.name) {
			t.Errorf("usage of %s is %q", task.name, task.usage)
		}
	}
}

func TestMistypedCommandLines(t *testing.T) {
	tests := []struct {
		args []string
		says string
	}{
		{nil, "usage:"},
		{[]string{"tset"}, `"tset" is no task; choose run, test`},
		{[]string{"test", "-nope"}, "usage: go run ./cmd/task test"},
		{[]string{"bench", "Lay"}, `"Lay" is one argument too many`},
		{[]string{"fuzz", "-time", "soon"}, "usage: go run ./cmd/task fuzz"},
		{[]string{"fuzz", "-time", "-1m"}, "give a time such as 30s or 5m"},
	}
	for _, test := range tests {
		p := pretend(t, "linux", true)
		if code := do(p.machine, test.args); code != exitUsage {
			t.Errorf("%q ends with code %d, want %d", test.args, code, exitUsage)
		}
		if !strings.Contains(p.errors.String(), test.says) {
			t.Errorf("%q says %q, want %q in it", test.args, &p.errors, test.says)
		}
		if len(p.ran) > 0 {
			t.Errorf("%q ran %v", test.args, p.ran)
		}
	}
}

func TestExitCodeOfACommandIsHandedOn(t *testing.T) {
	failure := exec.Command("go", "help", "no-such-topic").Run()
	var exit *exec.ExitError
	if !errors.As(failure, &exit) {
		t.Fatalf("go help no-such-topic: %v, want an exit code", failure)
	}
	wrapped := errors.Join(fmt.Errorf("go: %w", failure))
	if got := exitCode(io.Discard, task{}, wrapped); got != exit.ExitCode() {
		t.Errorf("got %d, want %d", got, exit.ExitCode())
	}
	if got := exitCode(io.Discard, task{}, errPretended); got != exitFailed {
		t.Errorf("an error without a code gives %d, want %d", got, exitFailed)
	}
}
