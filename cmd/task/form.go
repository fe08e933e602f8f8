package main

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
)

// form is an archive with the window: for which platform, and the compiler for it.
type form struct {
	platform
	compiler string
}

// mingwNotice is where Debian keeps the notice of the run-time library that mingw-w64
// links into a program.
const mingwNotice = "/usr/share/doc/mingw-w64-x86-64-dev/copyright"

const resourceCompiler = "x86_64-w64-mingw32-windres"

// forms returns the archives. Both are built on a 64-bit Linux PC.
func forms() []form {
	return []form{
		{platform{"linux", "amd64"}, "gcc"},
		{platform{"windows", "amd64"}, "x86_64-w64-mingw32-gcc"},
	}
}

// canPack tells whether archives with the window can be built on the machine at all.
func canPack(m *machine) bool { return m.system == "linux" && runtime.GOARCH == "amd64" }

// parts returns what building the archive needs on Linux.
func (f form) parts() []program {
	if f.system == "windows" {
		return []program{
			{f.compiler, "gcc-mingw-w64-x86-64"},
			{resourceCompiler, "binutils-mingw-w64-x86-64"},
			{mingwNotice, "mingw-w64-x86-64-dev"},
		}
	}
	return windowBuildParts()
}

// missing says why the archive cannot be built here; "" where it can.
func (f form) missing(m *machine) string {
	if !canPack(m) {
		return "it is built on a 64-bit PC with Linux"
	}
	if missing := missingOf(f.parts(), m.has); len(missing) > 0 {
		return "on Debian, sudo apt-get install " + strings.Join(debianPackages(missing), " ")
	}
	return ""
}

// top returns the name of the folder in the archive.
func (f form) top(version string) string {
	return "gussetwright-" + version + "-" + f.system + "-" + f.processor
}

// archive returns the file name of the archive.
func (f form) archive(version string) string {
	if f.system == "windows" {
		return f.top(version) + ".zip"
	}
	return f.top(version) + ".tar.gz"
}

// env returns the environment in which the window is built.
func (f form) env() []string {
	return append([]string{
		"GOOS=" + f.system, "GOARCH=" + f.processor, "CC=" + f.compiler,
		"CGO_CFLAGS=-O2", "CGO_CPPFLAGS=", "CGO_LDFLAGS=",
	}, withCgo...)
}

// link returns what the linker of the window is told besides. On Windows that is the
// icon and the version, which are made in the folder work.
func (f form) link(y yard, work string) (string, error) {
	if f.system != "windows" {
		return `-B none -extldflags "-Wl,--build-id=none"`, nil
	}
	object, err := windowsResource(y, work)
	return `-H windowsgui -extldflags "-Wl,--no-insert-timestamp '` + object + `'"`, err
}

// windowsResource makes the icon, the version and the wishes of the program into an
// object file and returns its path.
func windowsResource(y yard, work string) (string, error) {
	icon, err := readIcon(y.m)
	if err != nil {
		return "", err
	}
	icons, err := windowsIcon(icon)
	if err != nil {
		return "", err
	}
	script, err := os.ReadFile(y.m.path("assets", "package", "gussetwright.rc"))
	if err != nil {
		return "", fmt.Errorf("describe the program to Windows: %w", err)
	}
	manifest, err := os.ReadFile(y.m.path("assets", "package", "gussetwright.manifest"))
	if err != nil {
		return "", fmt.Errorf("describe the program to Windows: %w", err)
	}
	filled := strings.NewReplacer("@NUMBERS@", y.numbers(), "@VERSION@", strconv.Quote(y.version)).Replace(string(script))
	for name, content := range map[string][]byte{"gussetwright.ico": icons, "gussetwright.rc": []byte(filled), "gussetwright.manifest": manifest} {
		if err := os.WriteFile(filepath.Join(work, name), content, readable); err != nil {
			return "", fmt.Errorf("describe the program to Windows: %w", err)
		}
	}
	const object = "resource.o"
	err = y.run(command{folder: work, words: []string{resourceCompiler, "--output-format=coff", "gussetwright.rc", object}})
	if err != nil {
		return "", fmt.Errorf("make the icon and the version for Windows: %w", err)
	}
	return filepath.Join(work, object), nil
}
