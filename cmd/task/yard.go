package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
)

// platform is a system and a processor in Go's words.
type platform struct{ system, processor string }

// platforms returns what gwbatch is built for.
func platforms() []platform {
	var all []platform
	for _, system := range []string{"linux", "darwin", "windows"} {
		for _, processor := range []string{"amd64", "arm64"} {
			all = append(all, platform{system, processor})
		}
	}
	return all
}

// batch returns the file name of gwbatch for the platform.
func (p platform) batch() string {
	return executable("gwbatch-"+p.system+"-"+p.processor, p.system)
}

// buildTags leave the coloured emoji out of the window: their font comes without a
// licence that could be handed on.
const buildTags = "no_emoji"

// yard is a source tree in which packages are built, and what they are stamped with.
type yard struct {
	m *machine
	issue
	env []string // on top of that of every build
}

// run runs a command of a build in the tree. The user's own settings of Go and of the
// C compiler are put aside, so that everyone builds the same.
func (y yard) run(c command) error {
	if c.folder == "" {
		c.folder = y.m.root
	}
	c.env = append(append(y.settings(), y.env...), c.env...)
	return y.m.run(c)
}

// settings are the environment of every build: one Go for all, the time of the release,
// and none of the user's own options.
func (y yard) settings() []string {
	return []string{
		"GOTOOLCHAIN=" + releaseGo, "GOFLAGS=", "GOEXPERIMENT=", "GOAMD64=v1", "GOARM64=v8.0",
		"SOURCE_DATE_EPOCH=" + strconv.FormatInt(y.date.Unix(), 10),
	}
}

// ask runs a command of the go tool in the tree and returns what it printed.
func (y yard) ask(f form, words ...string) (string, error) {
	return y.m.read(command{folder: y.m.root, env: append(y.settings(), f.env()...), words: words})
}

// goBuild returns the words that build a program, the same bytes on every machine with
// the same C compiler: without paths, marks of the version control, and ids.
func (y yard) goBuild(target, source, link string) []string {
	flags := "-s -w -buildid= " + y.stamp()
	if link != "" {
		flags += " " + link
	}
	return []string{"go", "build", "-trimpath", "-buildvcs=false", "-tags", buildTags, "-ldflags", flags, "-o", target, "./cmd/" + source}
}

// make builds all that can be built here into dist and returns the names of the files.
func (y yard) make() ([]string, error) {
	var files []string
	for _, p := range platforms() {
		env := append([]string{"GOOS=" + p.system, "GOARCH=" + p.processor}, withoutCgo...)
		if err := y.run(command{env: env, words: y.goBuild(filepath.Join("dist", p.batch()), "gwbatch", "")}); err != nil {
			return nil, err
		}
		files = append(files, p.batch())
	}
	for _, f := range forms() {
		if f.missing(y.m) != "" {
			continue
		}
		if err := y.pack(f); err != nil {
			return nil, err
		}
		files = append(files, f.archive(y.version))
	}
	return files, y.lookForPaths(files)
}

// pack builds the window for a platform and writes the archive.
func (y yard) pack(f form) error {
	work, err := os.MkdirTemp("", "gussetwright-package-")
	if err != nil {
		return fmt.Errorf("make room for building: %w", err)
	}
	defer os.RemoveAll(work)
	link, err := f.link(y, work)
	if err != nil {
		return err
	}
	window := filepath.Join(work, executable("gussetwright", f.system))
	if err := y.run(command{env: f.env(), words: y.goBuild(window, "gussetwright", link)}); err != nil {
		return fmt.Errorf("build the window for %s: %w", f.system, err)
	}
	if err := y.lookForPathsIn(window); err != nil {
		return err
	}
	members, err := f.members(y, window)
	if err != nil {
		return err
	}
	return saveArchive(y.m.path("dist", f.archive(y.version)), f.top(y.version), members, y.date)
}

// leftOut says what was not built, and why.
func (y yard) leftOut() []string {
	var notes []string
	for _, f := range forms() {
		if reason := f.missing(y.m); reason != "" {
			notes = append(notes, f.archive(y.version)+" was left out: "+reason)
		}
	}
	return append(notes, "the window for macOS is not packaged: it needs a compiler on a Mac (go run ./cmd/task run builds it there)")
}

// lookForPaths makes sure that no program carries a path of this machine.
func (y yard) lookForPaths(files []string) error {
	for _, name := range files {
		if err := y.lookForPathsIn(y.m.path("dist", name)); err != nil {
			return err
		}
	}
	return nil
}

func (y yard) lookForPathsIn(file string) error {
	data, err := os.ReadFile(file)
	if err != nil {
		return fmt.Errorf("look at what was built: %w", err)
	}
	paths := []string{y.m.root, filepath.Join(os.TempDir(), "go-build"), filepath.Join(os.TempDir(), "gussetwright-package-")}
	if home, err := os.UserHomeDir(); err == nil {
		paths = append(paths, filepath.Join(home, "go", "pkg"))
	}
	for _, path := range paths {
		if bytes.Contains(data, []byte(path+string(filepath.Separator))) {
			return fmt.Errorf("%s holds a path of this machine, %s, so nobody else could build the same file", filepath.Base(file), path)
		}
	}
	return nil
}
