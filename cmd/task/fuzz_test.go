package main

import (
	"errors"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

const fuzzSource = `package read

import "testing"

func FuzzRead(f *testing.F)        { f.Fuzz(func(*testing.T, string) {}) }
func FuzzWrite(f *testing.F)       { f.Fuzz(func(*testing.T, string) {}) }
func TestFuzzLike(t *testing.T)    {}
func fuzzHelper(f *testing.F)      {}
func Fuzzy(f *testing.F)           {}
func FuzzyLimit(a, b int) bool     { return a > b }

type reader struct{}

func (reader) FuzzMethod(f *testing.F) {}
`

func fuzzTree(t *testing.T) string {
	t.Helper()
	root := t.TempDir()
	for path, content := range map[string]string{
		"go.mod":            "module m\n\ngo 1.24\n",
		"read/read.go":      "package read\n\nfunc FuzzNotInATest() {}\n",
		"read/read_test.go": fuzzSource,
	} {
		writeFile(t, filepath.Join(root, filepath.FromSlash(path)), content)
	}
	return root
}

// The go command itself must list the same targets.
func TestFuzzTargetsAgreeWithGoTestList(t *testing.T) {
	root := fuzzTree(t)
	command := exec.Command("go", "test", "-vet=off", "-list", "^Fuzz", "./read")
	command.Dir = root
	command.Env = append(command.Environ(), withoutCgo...)
	output, err := command.Output()
	if err != nil {
		t.Fatalf("go test -list: %v", err)
	}
	var want []fuzzTarget
	for line := range strings.Lines(string(output)) {
		if strings.HasPrefix(line, "Fuzz") {
			want = append(want, fuzzTarget{"read", strings.TrimSpace(line)})
		}
	}
	got, err := fuzzTargets(root)
	if err != nil || !slices.Equal(got, want) || len(want) != 2 {
		t.Errorf("got %v, %v; go test -list says %v", got, err, want)
	}
}

func TestFuzzGivesEachTargetItsTurn(t *testing.T) {
	tests := []struct {
		args   []string
		broken string
		want   []string
		says   []string
	}{
		{nil, "", []string{
			"CGO_ENABLED=0 go test -run '^$' -fuzz '^FuzzRead$' -fuzztime 1m0s -fuzzminimizetime 1s ./read",
			"CGO_ENABLED=0 go test -run '^$' -fuzz '^FuzzWrite$' -fuzztime 1m0s -fuzzminimizetime 1s ./read",
		}, []string{"FuzzRead in read: held", "FuzzWrite in read: held"}},
		{[]string{"-time", "5m", "write"}, "", []string{
			"CGO_ENABLED=0 go test -run '^$' -fuzz '^FuzzWrite$' -fuzztime 5m0s -fuzzminimizetime 1s ./read",
		}, []string{"fuzzed 5m0s each"}},
		{[]string{"-time", "1s"}, "FuzzRead", []string{
			"CGO_ENABLED=0 go test -run '^$' -fuzz '^FuzzRead$' -fuzztime 1s -fuzzminimizetime 1s ./read",
			"CGO_ENABLED=0 go test -run '^$' -fuzz '^FuzzWrite$' -fuzztime 1s -fuzzminimizetime 1s ./read",
		}, []string{"FuzzRead in read: FAILED without an input", "FuzzWrite in read: held"}},
	}
	for _, test := range tests {
		p := pretend(t, "linux", false)
		p.root = fuzzTree(t)
		p.broken = test.broken
		err := runFuzz(p.machine, test.args)
		if errors.Is(err, errPretended) != (test.broken != "") {
			t.Errorf("%q: %v", test.args, err)
		}
		if !slices.Equal(p.ran, test.want) {
			t.Errorf("%q ran %q, want %q", test.args, p.ran, test.want)
		}
		for _, words := range test.says {
			if !strings.Contains(p.out.String(), words) {
				t.Errorf("%q says %q, want %q in it", test.args, &p.out, words)
			}
		}
	}
}

func TestFailureOfATarget(t *testing.T) {
	tests := []struct {
		before, after []string
		want          string
	}{
		{nil, []string{"a"}, "BROKE, see a"},
		{[]string{"a"}, []string{"a", "b"}, "BROKE, see b"},
		{[]string{"a"}, []string{"a"}, "FAILED and stored no new input"},
		{nil, nil, "FAILED without an input"},
	}
	for _, test := range tests {
		if got := failure(test.before, test.after); !strings.HasPrefix(got, test.want) {
			t.Errorf("%v, then %v: got %q, want %q", test.before, test.after, got, test.want)
		}
	}
}

// A target that broke is reported with the input that go stored for it.
func TestInputThatBrokeATargetIsFound(t *testing.T) {
	p := pretend(t, "linux", false)
	p.root = fuzzTree(t)
	stored := p.path("read", "testdata", "fuzz", "FuzzRead", "0123456789abcdef")
	p.run = func(c command) error {
		if strings.Contains(c.String(), "FuzzRead") {
			writeFile(t, stored, "go test fuzz v1\nstring(\"0\")\n")
			return errPretended
		}
		return nil
	}
	if err := runFuzz(p.machine, nil); !errors.Is(err, errPretended) {
		t.Errorf("got %v", err)
	}
	if !strings.Contains(p.out.String(), "FuzzRead in read: BROKE, see "+stored) {
		t.Errorf("said %q", &p.out)
	}
}

func TestFuzzWithoutATarget(t *testing.T) {
	p := pretend(t, "linux", false)
	p.root = fuzzTree(t)
	if err := runFuzz(p.machine, []string{"Nobody"}); err == nil || !strings.Contains(err.Error(), "there are 2") {
		t.Errorf("got %v", err)
	}
	if err := fuzzEach(p.machine, nil, time.Second); err != nil {
		t.Errorf("no targets: %v", err)
	}
}
