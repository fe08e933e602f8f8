package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// pretended is a machine that runs nothing: it notes the commands, gains the
// programs that it is asked to install, and can fail at one command.
type pretended struct {
	*machine
	programs    []string
	ran         []string
	broken      string            // a command that contains this fails
	screen      bool              // there is a display
	answers     map[string]string // what a command prints that contains the key
	out, errors bytes.Buffer
}

var errPretended = errors.New("pretended failure")

func pretend(t *testing.T, system string, root bool, programs ...string) *pretended {
	t.Helper()
	p := &pretended{programs: programs}
	folder := t.TempDir()
	writeFile(t, filepath.Join(folder, "testdata", "outside", listName), `{"dependencies":{}}`)
	writeFile(t, filepath.Join(folder, "testdata", "outside", lockName), `{"packages":{}}`)
	p.machine = &machine{
		system: system, root: folder, out: &p.out, errors: &p.errors,
		has:       func(program string) bool { return slices.Contains(p.programs, program) },
		run:       p.note,
		read:      func(c command) (string, error) { return p.answer(c), p.note(c) },
		superuser: func() bool { return root },
		show:      func(c command, title, picture string) error { return p.note(c) },
		display:   func() bool { return p.screen },
		cache:     func() (string, error) { return filepath.Join(folder, "cache"), nil },
	}
	return p
}

// answer returns what a command prints.
func (p *pretended) answer(c command) string {
	line := c.String()
	for part, answer := range p.answers {
		if strings.Contains(line, part) {
			return answer
		}
	}
	if strings.Contains(line, holeReports) {
		return "/reports\n"
	}
	return ""
}

func (p *pretended) note(c command) error {
	line := c.String()
	p.ran = append(p.ran, line)
	if p.broken != "" && strings.Contains(line, p.broken) {
		return errPretended
	}
	for _, program := range allParts() {
		first, _, _ := strings.Cut(program.debian, " ")
		if slices.Contains(c.words, "apt-get") && slices.Contains(c.words, first) {
			p.programs = append(p.programs, program.command)
		}
	}
	if c.words[0] == "npm" {
		return os.MkdirAll(filepath.Join(c.folder, "node_modules"), 0o755)
	}
	return nil
}

// allParts returns everything that a task may install.
func allParts() []program {
	all := append(append(programs(), windowParts("linux")...), tryParts()...)
	for _, f := range forms() {
		all = append(all, f.parts()...)
	}
	return all
}

func writeFile(t *testing.T, path, content string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
}

// allPrograms returns the commands of every outside program and of others.
func allPrograms(more ...string) []string { return append(commandsOf(programs()), more...) }

func TestCommandIsTypedAsInAShell(t *testing.T) {
	tests := []struct {
		command command
		want    string
	}{
		{goTool("vet", "./..."), "CGO_ENABLED=0 go vet ./..."},
		{goTool("test", "-run", "^$"), "CGO_ENABLED=0 go test -run '^$'"},
		{command{words: []string{"echo", "it's", ""}}, `echo 'it'\''s' ''`},
	}
	for _, test := range tests {
		if got := test.command.String(); got != test.want {
			t.Errorf("got %s, want %s", got, test.want)
		}
	}
}

func TestModuleRootIsFoundFromBelow(t *testing.T) {
	top := t.TempDir()
	writeFile(t, filepath.Join(top, "go.mod"), "module m\n")
	below := filepath.Join(top, "a", "b")
	if err := os.MkdirAll(below, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, folder := range []string{top, below} {
		if got, err := moduleRoot(folder); err != nil || got != top {
			t.Errorf("from %s: got %q, %v; want %q", folder, got, err, top)
		}
	}
}
