package main

import (
	"fmt"
	"os"
	"strings"

	"gussetwright/assets"
)

// source is a file of the tree and where it goes in an archive.
type source struct {
	name string
	from []string
}

// members returns what goes into the archive beside the window, which was built before.
func (f form) members(y yard, window string) ([]member, error) {
	place, documents, programs, files := "share/gussetwright/", "share/doc/gussetwright/", "bin/", []source{
		{"INSTALL.txt", []string{"assets", "package", "linux.txt"}},
		{"share/applications/" + iconID + ".desktop", []string{"assets", "package", iconID + ".desktop"}},
		{"share/mime/packages/" + iconID + ".xml", []string{"assets", "package", iconID + ".xml"}},
		{"share/doc/gussetwright/LICENSE", []string{"LICENSE"}},
	}
	if f.system == "windows" {
		place, documents, programs, files = "", "", "", []source{
			{"README.txt", []string{"assets", "package", "windows.txt"}},
			{"LICENSE.txt", []string{"LICENSE"}},
		}
	}
	files = append(files,
		source{place + assets.DemoName, []string{"assets", "demo", assets.DemoName}},
		source{documents + "CHANGES.md", []string{"assets", "changes.md"}})
	all, err := f.programs(y, window, programs)
	if err != nil {
		return nil, err
	}
	for _, one := range files {
		file, err := fromDisk(one.name, readable, y.m.path(one.from...))
		if err != nil {
			return nil, err
		}
		all = append(all, file)
	}
	guide, err := userGuide(y.m)
	if err != nil {
		return nil, err
	}
	all = append(all, member{documents + "GUIDE.md", readable, guide})
	notices, err := licences(y, f)
	if err != nil {
		return nil, err
	}
	for _, notice := range notices {
		notice.name = documents + notice.name
		all = append(all, notice)
	}
	if f.system != "linux" {
		return all, nil
	}
	icons, err := linuxIcons(y.m)
	return append(all, icons...), err
}

// programs returns the two programs, in a folder of the archive.
func (f form) programs(y yard, window, folder string) ([]member, error) {
	var all []member
	for name, path := range map[string]string{"gussetwright": window, "gwbatch": y.m.path("dist", f.batch())} {
		program, err := fromDisk(folder+executable(name, f.system), runnable, path)
		if err != nil {
			return nil, err
		}
		all = append(all, program)
	}
	return all, nil
}

// userGuide returns the README from the chapter on the window to its end: how to use
// the program and what its files are. The chapters above are on building it.
func userGuide(m *machine) ([]byte, error) {
	text, err := os.ReadFile(m.path("README.md"))
	if err != nil {
		return nil, fmt.Errorf("take the guide from the README: %w", err)
	}
	const first = "\n## In the window\n"
	_, guide, found := strings.Cut(strings.ReplaceAll(string(text), "\r\n", "\n"), first)
	if !found {
		return nil, fmt.Errorf("take the guide from the README: it has no chapter %q", strings.TrimSpace(first))
	}
	return []byte("# How to use Gussetwright\n" + first + guide), nil
}
