package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// source files of the module that packages are made of.
var packed = []string{
	"FyneApp.toml", "README.md", "LICENSE", "assets/changes.md", "assets/demo/tea-house.gusset",
	"assets/icon/gussetwright.png", "assets/icon/gussetwright.svg", "assets/licences/pdfium.txt",
	"assets/package/linux.txt", "assets/package/windows.txt", "assets/package/gussetwright.rc", "assets/package/gussetwright.manifest",
	"assets/package/net.gussetwright.app.desktop", "assets/package/net.gussetwright.app.xml",
}

// pretendToBuild returns a machine with the real files that packages are made of. Its
// go builds a file that holds what was asked for.
func pretendToBuild(t *testing.T, system string, programs ...string) *pretended {
	t.Helper()
	p := pretend(t, system, true, programs...)
	for _, name := range packed {
		content, err := os.ReadFile(filepath.Join(geomtest.Root(t), filepath.FromSlash(name)))
		if err != nil {
			t.Fatal(err)
		}
		writeFile(t, p.path(filepath.FromSlash(name)), string(content))
	}
	goRoot := filepath.Join(p.root, "goroot")
	writeFile(t, filepath.Join(goRoot, "LICENSE"), "the licence of Go")
	library := filepath.Join(p.root, "cache", "library")
	writeFile(t, filepath.Join(library, "LICENSE.md"), "the licence of the library")
	writeFile(t, filepath.Join(library, "font", "COPYING"), "the licence of its font")
	writeFile(t, filepath.Join(library, "testdata", "LICENSE"), "of no part of the program")
	writeFile(t, filepath.Join(library, "license.go"), "package library")
	p.run = func(c command) error {
		if err := p.note(c); err != nil {
			return err
		}
		for i, word := range c.words {
			if word == "-o" && !slices.Contains(c.words, "apt-get") {
				target := c.words[i+1]
				if !filepath.IsAbs(target) {
					target = filepath.Join(c.folder, target)
				}
				writeFile(t, target, strings.Join(c.words[:i], " "))
			}
		}
		return nil
	}
	p.read = func(c command) (string, error) {
		if line := c.String(); strings.Contains(line, "go env") {
			return goRoot + "\n", p.note(c)
		}
		return "\nexample.org/library\tv1.2.3\t" + library + "\n\t\t\n", p.note(c)
	}
	return p
}

func currentVersion(t *testing.T) string {
	t.Helper()
	version, err := versionOf(filepath.Join(geomtest.Root(t), "FyneApp.toml"))
	if err != nil {
		t.Fatal(err)
	}
	return version
}

func TestPackageBuildsEveryPlatform(t *testing.T) {
	p := pretendToBuild(t, "darwin")
	if err := buildPackages(p.machine, nil); err != nil {
		t.Fatal(err)
	}
	if len(p.ran) != 6 {
		t.Errorf("ran %d commands, want 6", len(p.ran))
	}
	last := p.ran[len(p.ran)-1]
	for _, words := range []string{
		"GOOS=windows GOARCH=arm64 CGO_ENABLED=0 go build -trimpath -buildvcs=false", "GOFLAGS= ",
		"-s -w -buildid= -X gussetwright/app/release.version=" + currentVersion(t), "gwbatch-windows-arm64.exe ./cmd/gwbatch",
	} {
		if !strings.Contains(last, words) {
			t.Errorf("ran %s, want %q in it", last, words)
		}
	}
	for _, built := range platforms() {
		if !strings.Contains(p.out.String(), built.batch()) {
			t.Errorf("%s is not listed in %q", built.batch(), &p.out)
		}
	}
	if !strings.Contains(p.out.String(), "windows-amd64.zip was left out: it is built on a 64-bit PC with Linux") {
		t.Errorf("does not say what is missing: %q", &p.out)
	}
}

func TestPackageThatWasNotBuilt(t *testing.T) {
	p := pretendToBuild(t, "darwin")
	p.run = p.note
	if err := buildPackages(p.machine, nil); err == nil {
		t.Error("no error although no file was built")
	}
}

// A tree whose path stands in a program cannot be built alike by others.
func TestPackageWithAPathOfTheMachine(t *testing.T) {
	p := pretendToBuild(t, "darwin")
	build := p.run
	p.run = func(c command) error {
		if err := build(c); err != nil {
			return err
		}
		writeFile(t, p.path("dist", platforms()[0].batch()), "panic at "+p.path("cmd", "main.go"))
		return nil
	}
	if err := buildPackages(p.machine, nil); err == nil || !strings.Contains(err.Error(), "holds a path of this machine") {
		t.Errorf("got %v", err)
	}
}

func TestLinuxArchiveFromPretendedParts(t *testing.T) {
	p := pretendToBuild(t, "linux", append(commandsOf(windowBuildParts()), "dnf")...)
	if !canPack(p.machine) {
		t.Skip("archives are built on a 64-bit PC")
	}
	if err := buildPackages(p.machine, []string{"-twice"}); err != nil {
		t.Fatal(err)
	}
	all := strings.Join(p.ran, "\n")
	for _, words := range []string{"CC=gcc", "CGO_ENABLED=1 go build -trimpath", "--build-id=none", "-tags no_emoji", "GOCACHE="} {
		if !strings.Contains(all, words) {
			t.Errorf("no %q in\n%s", words, all)
		}
	}
	for _, words := range []string{"windows-amd64.zip was left out: on Debian, sudo apt-get install gcc-mingw-w64-x86-64", "Both builds are equal"} {
		if !strings.Contains(p.out.String(), words) {
			t.Errorf("said %q, want %q", &p.out, words)
		}
	}
	top := "gussetwright-" + currentVersion(t) + "-linux-amd64"
	found := listTar(t, p.path("dist", top+".tar.gz"))
	for _, name := range []string{
		"bin/gussetwright", "bin/gwbatch", "INSTALL.txt", "share/applications/net.gussetwright.app.desktop",
		"share/mime/packages/net.gussetwright.app.xml", "share/icons/hicolor/48x48/apps/net.gussetwright.app.png",
		"share/gussetwright/tea-house.gusset", "share/doc/gussetwright/LICENSE", "share/doc/gussetwright/GUIDE.md",
		"share/doc/gussetwright/licences/go/LICENSE", "share/doc/gussetwright/licences/pdfium.txt",
		"share/doc/gussetwright/licences/example.org/library/LICENSE.md",
		"share/doc/gussetwright/licences/example.org/library/font/COPYING",
	} {
		if _, is := found[top+"/"+name]; !is {
			t.Errorf("%s is not in the archive", name)
		}
	}
	for name := range found {
		if strings.Contains(name, "testdata") || strings.HasSuffix(name, ".go") {
			t.Errorf("%s is in the archive", name)
		}
	}
	if found[top+"/bin/gussetwright"] != runnable || found[top+"/INSTALL.txt"] != readable {
		t.Errorf("rights: %v of the program, %v of the note", found[top+"/bin/gussetwright"], found[top+"/INSTALL.txt"])
	}
}

func TestPackageInstallsWhatIsMissing(t *testing.T) {
	p := pretendToBuild(t, "linux", "apt-get")
	if !canPack(p.machine) {
		t.Skip("archives are built on a 64-bit PC")
	}
	p.broken = " install "
	if err := buildPackages(p.machine, []string{"-try"}); err == nil || !strings.Contains(err.Error(), "could not install") {
		t.Errorf("got %v", err)
	}
	for _, words := range []string{"gcc-mingw-w64-x86-64 binutils-mingw-w64-x86-64", "libgl-dev", "wine64", "xvfb"} {
		if !strings.Contains(p.ran[1], words) {
			t.Errorf("ran %s, want %q in it", p.ran[1], words)
		}
	}
	if !strings.Contains(p.out.String(), "not tried, since it was not built") {
		t.Errorf("said %q", &p.out)
	}
	p = pretendToBuild(t, "linux", "apt-get")
	if err := buildPackages(p.machine, []string{"-no-install"}); err != nil || strings.Contains(strings.Join(p.ran, "\n"), "apt-get") {
		t.Errorf("-no-install: %v, ran\n%s", err, strings.Join(p.ran, "\n"))
	}
}

func TestSecondBuildThatDiffers(t *testing.T) {
	p := pretendToBuild(t, "darwin")
	build := p.run
	p.run = func(c command) error {
		if strings.Contains(c.String(), "GOCACHE=") {
			c.words = append([]string{"second"}, c.words...)
		}
		return build(c)
	}
	err := buildPackages(p.machine, []string{"-twice"})
	if err == nil || !strings.Contains(err.Error(), "differs from the first in gwbatch-linux-amd64, ") {
		t.Errorf("got %v", err)
	}
}

func TestModuleWithoutALicence(t *testing.T) {
	one := module{path: "example.org/bare", folder: t.TempDir()}
	if _, err := one.notices(); err == nil || !strings.Contains(err.Error(), "example.org/bare") {
		t.Errorf("got %v", err)
	}
}

// The trial starts both programs of each archive, and compares what they export.
func TestTrialOfTheArchives(t *testing.T) {
	for _, test := range []struct {
		name, said, exported, says string
	}{
		{"all is well", currentVersion(t), "same", ""},
		{"another version", "0.0.1", "same", `says "gwbatch 0.0.1"`},
		{"another file on Windows", currentVersion(t), "", "gwbatch writes other files on another system"},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := pretendToBuild(t, "linux", "apt-get")
			if !canPack(p.machine) {
				t.Skip("archives are built on a 64-bit PC")
			}
			for _, part := range allParts() {
				p.programs = append(p.programs, part.command)
			}
			build, read := p.run, p.read
			p.run = func(c command) error {
				if folder, is := argument(c, "--to"); is {
					content := test.exported
					if content == "" {
						content = c.words[0]
					}
					writeFile(t, filepath.Join(folder, "demo.dxf"), content)
				}
				return build(c)
			}
			p.read = func(c command) (string, error) {
				program := strings.TrimSuffix(filepath.Base(c.words[len(c.words)-2]), ".exe")
				if program == "gwbatch" || program == "gussetwright" {
					return program + " " + test.said + "\r\n", p.note(c)
				}
				return read(c)
			}
			if _, err := os.Stat(mingwNotice); err != nil {
				t.Skip("mingw-w64 is not installed, so there is no notice of it to pack")
			}
			err := buildPackages(p.machine, []string{"-try"})
			if test.says != "" {
				if err == nil || !strings.Contains(err.Error(), test.says) {
					t.Errorf("got %v, want %q", err, test.says)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			inOrder(t, p.ran, []string{
				"windres", "tar -xzf", "bin/gwbatch export", "bin/gussetwright", "wineboot", "bcryptprimitives.dll", "unzip -q", "gwbatch.exe export", "wineserver --wait", "gussetwright.exe",
			})
			for _, words := range []string{"linux-amd64.tar.gz: its programs ran on this machine", "windows-amd64.zip: its programs ran under Wine", "not tried: gwbatch for macOS"} {
				if !strings.Contains(p.out.String(), words) {
					t.Errorf("said %q, want %q", &p.out, words)
				}
			}
		})
	}
}

// argument returns the word that follows another in a command.
func argument(c command, word string) (string, bool) {
	for i := range len(c.words) - 1 {
		if c.words[i] == word {
			return c.words[i+1], true
		}
	}
	return "", false
}
