package main

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// command is a program to run.
type command struct {
	folder string   // empty for the top folder of the module
	env    []string // NAME=value, on top of the environment of this process
	words  []string // the program and its arguments
}

// String returns the command as it would be typed in a shell.
func (c command) String() string {
	return strings.Join(append(append([]string{}, c.env...), quoted(c.words)...), " ")
}

func quoted(words []string) []string {
	var typed []string
	for _, word := range words {
		if word == "" || strings.ContainsAny(word, " $^'\"\\|&;()<>*?") {
			word = "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
		}
		typed = append(typed, word)
	}
	return typed
}

// withoutCgo is the environment of every build: no C compiler is needed.
var withoutCgo = []string{"CGO_ENABLED=0"}

// goTool returns a command of the go tool without cgo.
func goTool(words ...string) command {
	return command{env: withoutCgo, words: append([]string{"go"}, words...)}
}

// machine is the computer that a task runs on. Tests replace its functions.
type machine struct {
	system      string // as runtime.GOOS
	root        string // the top folder of the module
	out, errors io.Writer
	// display tells, on Linux, whether there is a screen to open a window on.
	display func() bool
	// has tells whether a program, or a file with its whole path, can be found.
	has func(program string) bool
	// run runs a command and lets its output through.
	run func(command) error
	// read runs a command and returns what it printed.
	read func(command) (string, error)
	// show starts a program with a window on a screen that no one sees, waits for the
	// words in its title, and writes a picture of it to a file.
	show func(c command, title, picture string) error
	// superuser tells whether the user is root.
	superuser func() bool
	// cache returns the folder for what can be fetched again.
	cache func() (string, error)
}

// thisMachine returns the computer at hand.
func thisMachine() (*machine, error) {
	folder, err := os.Getwd()
	if err != nil {
		return nil, fmt.Errorf("find the module: %w", err)
	}
	root, err := moduleRoot(folder)
	if err != nil {
		return nil, err
	}
	return &machine{
		system: runtime.GOOS, root: root, out: os.Stdout, errors: os.Stderr,
		has:       has,
		display:   func() bool { return os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != "" },
		run:       func(c command) error { return runHere(root, c) },
		read:      func(c command) (string, error) { return readHere(root, c) },
		show:      func(c command, title, picture string) error { return showHere(root, c, title, picture) },
		superuser: func() bool { return os.Geteuid() == 0 },
		cache:     os.UserCacheDir,
	}, nil
}

func has(program string) bool {
	if strings.HasPrefix(program, "/") {
		_, err := os.Stat(program)
		return err == nil
	}
	_, err := exec.LookPath(program)
	return err == nil
}

// moduleRoot returns the nearest folder at or above folder that holds a go.mod.
func moduleRoot(folder string) (string, error) {
	for at := folder; ; at = filepath.Dir(at) {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return at, nil
		}
		if at == filepath.Dir(at) {
			return "", fmt.Errorf("find the module: no go.mod in %s or above; change into the source folder of Gussetwright", folder)
		}
	}
}

func prepare(root string, c command) *exec.Cmd {
	process := exec.Command(c.words[0], c.words[1:]...)
	process.Dir = root
	if c.folder != "" {
		process.Dir = c.folder
	}
	process.Env = append(os.Environ(), c.env...)
	process.Stderr = os.Stderr
	return process
}

func runHere(root string, c command) error {
	fmt.Println("»", c)
	process := prepare(root, c)
	process.Stdout = os.Stdout
	if err := process.Run(); err != nil {
		return fmt.Errorf("%s: %w", c, err)
	}
	return nil
}

func readHere(root string, c command) (string, error) {
	output, err := prepare(root, c).Output()
	if err != nil {
		return "", fmt.Errorf("%s: %w", c, err)
	}
	return string(output), nil
}

// path returns a path inside the module.
func (m *machine) path(parts ...string) string {
	return filepath.Join(append([]string{m.root}, parts...)...)
}

// executable returns the name of a program as the system wants it.
func executable(name, system string) string {
	if system == "windows" {
		return name + ".exe"
	}
	return name
}
