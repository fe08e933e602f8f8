package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// module is a Go module that is part of a program.
type module struct{ path, version, folder string }

// linkedModules returns the modules of which a program for the platform has a part,
// in the order of their paths; ours is not among them.
func linkedModules(y yard, f form, packages ...string) ([]module, error) {
	words := []string{"go", "list", "-deps", "-tags", buildTags, "-f", "{{with .Module}}{{.Path}}\t{{.Version}}\t{{.Dir}}{{end}}"}
	output, err := y.ask(f, append(words, packages...)...)
	if err != nil {
		return nil, fmt.Errorf("list the modules of the program: %w", err)
	}
	var all []module
	for _, line := range strings.Split(output, "\n") {
		parts := strings.Split(strings.TrimRight(line, "\r"), "\t")
		if len(parts) == 3 && parts[1] != "" {
			all = append(all, module{parts[0], parts[1], parts[2]})
		}
	}
	slices.SortFunc(all, func(a, b module) int { return strings.Compare(a.path, b.path) })
	return slices.Compact(all), nil
}

// licences returns the notices of what the programs of an archive are built from: of
// every module, of Go itself, of what PDFium was made from, and of others that the
// platform adds. All lie in the folder licences.
func licences(y yard, f form) ([]member, error) {
	modules, err := linkedModules(y, f, "./cmd/gussetwright", "./cmd/gwbatch")
	if err != nil {
		return nil, err
	}
	goRoot, err := y.ask(f, "go", "env", "GOROOT")
	if err != nil {
		return nil, fmt.Errorf("find the licence of Go: %w", err)
	}
	modules = append(modules, module{path: "go", folder: strings.TrimSpace(goRoot)})
	list := "Gussetwright has parts of these Go modules, with thanks to their makers. The folders\nbeside this file are named after them and hold their licences.\n\n"
	var all []member
	for _, one := range modules {
		notices, err := one.notices()
		if err != nil {
			return nil, err
		}
		all = append(all, notices...)
		list += strings.TrimSpace(one.path+" "+one.version) + "\n"
	}
	for name, path := range f.furtherLicences(y.m) {
		notice, err := fromDisk("licences/"+name, readable, path)
		if err != nil {
			return nil, err
		}
		all = append(all, notice)
	}
	return append(all, member{"licences/modules.txt", readable, []byte(list)}), nil
}

// furtherLicences returns where notices lie that no module brings, by their names in
// the archive.
func (f form) furtherLicences(m *machine) map[string]string {
	more := map[string]string{"pdfium.txt": m.path("assets", "licences", "pdfium.txt")}
	if f.system == "windows" {
		more["mingw-w64.txt"] = mingwNotice
	}
	return more
}

// notices returns the licence files of a module. A module without one is an error: it
// must not be handed on.
func (one module) notices() ([]member, error) {
	var all []member
	err := filepath.WalkDir(one.folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		relative, err := filepath.Rel(one.folder, path)
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if one.leavesOut(relative) {
				return filepath.SkipDir
			}
			return nil
		}
		if !isNotice(relative) {
			return nil
		}
		text, err := os.ReadFile(path)
		all = append(all, member{"licences/" + one.path + "/" + filepath.ToSlash(relative), readable, text})
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("gather the licence of %s: %w", one.path, err)
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("gather the licence of %s: there is none in %s", one.path, one.folder)
	}
	return all, nil
}

// leavesOut tells whether a folder of a module is no part of any program: tests and
// commands, and of Go all but its top.
func (one module) leavesOut(folder string) bool {
	if one.path == "go" {
		return folder != "."
	}
	return slices.Contains([]string{"testdata", "cmd", "examples"}, filepath.Base(folder))
}

// isNotice tells by its name whether a file of a module is a licence or belongs to one.
func isNotice(path string) bool {
	if filepath.Base(filepath.Dir(path)) == "licenses" {
		return true
	}
	name := strings.ToLower(filepath.Base(path))
	if filepath.Ext(name) == ".go" {
		return false
	}
	for _, start := range []string{"license", "licence", "copying", "copyright", "notice", "patents"} {
		if strings.HasPrefix(name, start) {
			return true
		}
	}
	return false
}
