package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"gussetwright/assets"
)

// tryParts returns what trying the archives needs: a screen that no one sees, and for
// the programs of Windows an imitation of it.
func tryParts() []program {
	return append(windowTestParts(),
		program{"desktop-file-validate", "desktop-file-utils"},
		program{"update-mime-database", "shared-mime-info"},
		program{"unzip", "unzip"},
		program{"wine", "wine wine64"},
	)
}

// trial is an archive that is unpacked and tried.
type trial struct {
	yard
	form
	folder string   // a folder for the trial alone
	top    string   // that of the archive, unpacked
	bin    string   // where the programs lie
	start  []string // what stands before a program to start it
	env    []string
	note   string // what was done to make it run
}

// try unpacks each archive as a user would and starts its programs. It says what ran,
// and what could not be tried here.
func (y yard) try() error {
	fmt.Fprintln(y.m.out, "\nThe packages are tried.")
	work, err := os.MkdirTemp("", "gussetwright-try-")
	if err != nil {
		return fmt.Errorf("make room for trying: %w", err)
	}
	defer os.RemoveAll(work)
	var said []string
	for _, f := range forms() {
		result, err := y.tryForm(f, filepath.Join(work, f.system))
		if err != nil {
			return fmt.Errorf("try %s: %w", f.archive(y.version), err)
		}
		said = append(said, f.archive(y.version)+": "+result)
	}
	if err := sameExports(work); err != nil {
		return err
	}
	said = append(said, "not tried: gwbatch for macOS and for arm64, for want of such machines")
	fmt.Fprintln(y.m.out, "\nWhat was tried:")
	for _, line := range said {
		fmt.Fprintln(y.m.out, " ", line)
	}
	return nil
}

// tryForm tries one archive and says how far that went.
func (y yard) tryForm(f form, folder string) (string, error) {
	if f.missing(y.m) != "" {
		return "not tried, since it was not built", nil
	}
	if missing := missingOf(tryParts(), y.m.has); len(missing) > 0 {
		return "not tried; that needs " + strings.Join(commandsOf(missing), ", "), nil
	}
	t := trial{yard: y, form: f, folder: folder, top: filepath.Join(folder, f.top(y.version))}
	if err := t.unpack(); err != nil {
		return "", err
	}
	if err := t.saysItsVersion(); err != nil {
		return "", err
	}
	export := t.command("gwbatch", "export", "--only", "dieline,svg,dxf,fold", "--to", filepath.Join(folder, "export"), t.demo())
	if err := y.m.run(export); err != nil {
		return "", err
	}
	if err := t.settle(); err != nil {
		return "", err
	}
	picture := y.m.path("dist", "try-"+f.system+".png")
	if err := y.m.show(t.command("gussetwright", t.demo()), strings.TrimSuffix(assets.DemoName, ".gusset"), picture); err != nil {
		return "", err
	}
	return "its programs ran " + t.where() + "; the window is in " + filepath.Join("dist", filepath.Base(picture)), nil
}

// where says on what the programs ran.
func (t trial) where() string {
	if t.system == "windows" {
		return "under Wine, which is not Windows" + t.note
	}
	return "on this machine, the window under Xvfb"
}

// unpack unpacks the archive with the system's own program and finds what is in it.
func (t *trial) unpack() error {
	home := filepath.Join(t.folder, "home")
	if err := os.MkdirAll(home, 0o777); err != nil {
		return err
	}
	t.env = []string{"HOME=" + home, "XDG_CONFIG_HOME=" + home, "XDG_CACHE_HOME=" + filepath.Join(home, "cache"), "LANG=en_US.UTF-8", "LC_MEASUREMENT=en_GB.UTF-8"}
	archive := t.m.path("dist", t.archive(t.version))
	if t.system == "windows" {
		t.bin, t.start = t.top, []string{"wine"}
		if err := t.prepareWine(filepath.Join(home, "wine")); err != nil {
			return err
		}
		return t.m.run(command{folder: t.folder, words: []string{"unzip", "-q", archive}})
	}
	t.bin = filepath.Join(t.top, "bin")
	if err := t.m.run(command{folder: t.folder, words: []string{"tar", "-xzf", archive}}); err != nil {
		return err
	}
	share := filepath.Join(t.top, "share")
	if err := t.m.run(command{words: []string{"desktop-file-validate", filepath.Join(share, "applications", iconID+".desktop")}}); err != nil {
		return err
	}
	return t.m.run(command{words: []string{"update-mime-database", filepath.Join(share, "mime")}})
}

// command returns the command that starts a program of the archive.
func (t trial) command(name string, args ...string) command {
	words := append(append([]string{}, t.start...), filepath.Join(t.bin, executable(name, t.system)))
	return command{folder: t.folder, env: t.env, words: append(words, args...)}
}

// demo returns the path of the demo project in the archive.
func (t trial) demo() string {
	if t.system == "windows" {
		return filepath.Join(t.top, assets.DemoName)
	}
	return filepath.Join(t.top, "share", "gussetwright", assets.DemoName)
}

// saysItsVersion asks both programs which version they are.
func (t trial) saysItsVersion() error {
	for _, ask := range [][2]string{{"gwbatch", "version"}, {"gussetwright", "--version"}} {
		name, word := ask[0], ask[1]
		said, err := t.m.read(t.command(name, word))
		if err != nil {
			return err
		}
		if want := name + " " + t.version; strings.TrimSpace(said) != want {
			return fmt.Errorf("%s says %q, want %q", name, strings.TrimSpace(said), want)
		}
	}
	return nil
}

// sameExports compares what gwbatch wrote on each system, where there is more than one:
// the same project must give the same bytes everywhere.
func sameExports(work string) error {
	folders, err := filepath.Glob(filepath.Join(work, "*", "export"))
	if err != nil || len(folders) < 2 {
		return err
	}
	entries, err := os.ReadDir(folders[0])
	if err != nil {
		return fmt.Errorf("compare what was exported: %w", err)
	}
	var names []string
	for _, entry := range entries {
		names = append(names, entry.Name())
	}
	if err := sameFiles(folders[0], folders[1], names); err != nil {
		return fmt.Errorf("gwbatch writes other files on another system: %w", err)
	}
	return nil
}
