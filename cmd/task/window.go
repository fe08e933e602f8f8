package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"
)

// withCgo is the environment in which the window is built.
var withCgo = []string{"CGO_ENABLED=1"}

// windowBuildParts returns what building the window needs on Linux: a C compiler,
// pkg-config and the headers of OpenGL and X11.
func windowBuildParts() []program {
	return []program{
		{"gcc", "gcc libc6-dev"},
		{"pkg-config", "pkg-config"},
		{"/usr/include/GL/gl.h", "libgl-dev"},
		{"/usr/include/X11/Xlib.h", "libx11-dev"},
		{"/usr/include/X11/Xcursor/Xcursor.h", "libxcursor-dev"},
		{"/usr/include/X11/extensions/Xrandr.h", "libxrandr-dev"},
		{"/usr/include/X11/extensions/Xinerama.h", "libxinerama-dev"},
		{"/usr/include/X11/extensions/XInput2.h", "libxi-dev"},
		{"/usr/include/X11/extensions/xf86vmode.h", "libxxf86vm-dev"},
	}
}

// windowTestParts returns what driving the window in a test needs besides: a screen
// that no one sees, a hand for mouse and keys, and a camera.
func windowTestParts() []program {
	return []program{
		{"Xvfb", "xvfb libgl1-mesa-dri"},
		{"xdotool", "xdotool"},
		{"import", "imagemagick"},
	}
}

const windowPartList = "a C compiler, the headers of OpenGL and X11, Xvfb, xdotool and ImageMagick"

// windowParts returns what the tests of the real window need on the system.
func windowParts(system string) []program {
	if system != "linux" {
		return nil
	}
	return append(windowBuildParts(), windowTestParts()...)
}

// setUpWindow installs what building the window needs and is missing. The
// compilers of macOS and Windows are looked for by the build itself.
func setUpWindow(m *machine) error {
	missing := missingOf(windowBuildParts(), m.has)
	if m.system != "linux" || len(missing) == 0 {
		return nil
	}
	err := installPrograms(m, missing)
	if errors.Is(err, errCannotInstall) {
		return fmt.Errorf("the window needs a C compiler and the headers of OpenGL and X11; on Debian: sudo apt-get install %s",
			strings.Join(debianPackages(missing), " "))
	}
	return err
}

// buildWindow builds the window and returns the path of the program.
func buildWindow(m *machine) (string, error) {
	path := filepath.Join("bin", executable("gussetwright", m.system))
	err := m.run(command{env: withCgo, words: []string{"go", "build", "-o", path, "./cmd/gussetwright"}})
	if err != nil {
		return "", fmt.Errorf("build the window (it needs a C compiler): %w", err)
	}
	return m.path(path), nil
}

// checkWindow vets and builds the program of the window with cgo, which the checks of
// all packages do without. The tests that drive it are those of app/window, and need
// the same parts.
func checkWindow(m *machine) error {
	if missing := missingOf(windowParts(m.system), m.has); m.system != "linux" || len(missing) > 0 {
		fmt.Fprintln(m.out, "note: the tests that drive the real window were left out; they need Linux and", windowPartList)
		return nil
	}
	if err := m.run(command{env: withCgo, words: []string{"go", "vet", "-composites=false", "./cmd/gussetwright"}}); err != nil {
		return err
	}
	_, err := buildWindow(m)
	return err
}
