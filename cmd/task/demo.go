package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// runDemo opens the window on the demo bag. Where there is no screen, or the window
// cannot be built, it writes the files of the demo bag instead and says so.
func runDemo(m *machine, args []string) error {
	if err := noMore(args); err != nil {
		return err
	}
	project, err := demoProject(m.path("assets", "demo"))
	if err != nil {
		return err
	}
	if m.system == "linux" && !m.display() {
		fmt.Fprintln(m.out, "There is no display here, so no window is opened; the files of the demo bag are written instead.")
		return exportDemo(m, project)
	}
	err = setUpWindow(m)
	program := ""
	if err == nil {
		program, err = buildWindow(m)
	}
	if err != nil {
		fmt.Fprintf(m.out, "No window is opened: %v\nThe files of the demo bag are written instead.\n", err)
		return exportDemo(m, project)
	}
	copied, err := copyDemo(m, project)
	if err != nil {
		return err
	}
	return m.run(command{words: []string{program, copied}})
}

// copyDemo copies the demo project to where it may be changed.
func copyDemo(m *machine, project string) (string, error) {
	data, err := os.ReadFile(project)
	if err != nil {
		return "", fmt.Errorf("copy the demo project: %w", err)
	}
	target := m.path("dist", filepath.Base(project))
	if err := os.MkdirAll(filepath.Dir(target), 0o777); err != nil {
		return "", fmt.Errorf("copy the demo project: %w", err)
	}
	if err := os.WriteFile(target, data, 0o666); err != nil {
		return "", fmt.Errorf("copy the demo project: %w", err)
	}
	return target, nil
}

// exportDemo builds gwbatch and lets it show what it makes of the demo bag.
func exportDemo(m *machine, project string) error {
	gwbatch := filepath.Join("bin", executable("gwbatch", m.system))
	if err := m.run(goTool("build", "-o", gwbatch, "./cmd/gwbatch")); err != nil {
		return err
	}
	target := filepath.Join("dist", "demo")
	relative, err := filepath.Rel(m.root, project)
	if err != nil {
		return fmt.Errorf("find the demo project: %w", err)
	}
	for _, words := range demoCommands(m.path(gwbatch), target, relative) {
		if err := m.run(command{words: words}); err != nil {
			return err
		}
	}
	return listFiles(m, target)
}

func demoCommands(gwbatch, target, project string) [][]string {
	return [][]string{
		{gwbatch, "describe", project},
		{gwbatch, "export", "--to", target, project},
	}
}

// demoProject returns the demo project in folder: the first .gusset file by name,
// else a bare bag.json.
func demoProject(folder string) (string, error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return "", fmt.Errorf("find the demo project: %w", err)
	}
	for _, entry := range entries {
		if strings.HasSuffix(entry.Name(), ".gusset") {
			return filepath.Join(folder, entry.Name()), nil
		}
	}
	if slices.ContainsFunc(entries, func(e fs.DirEntry) bool { return e.Name() == "bag.json" }) {
		return filepath.Join(folder, "bag.json"), nil
	}
	return "", fmt.Errorf("find the demo project: neither a .gusset file nor bag.json in %s", folder)
}

// listFiles says which files are in a folder of the module.
func listFiles(m *machine, folder string) error {
	entries, err := os.ReadDir(m.path(folder))
	if err != nil {
		return fmt.Errorf("list what was written: %w", err)
	}
	fmt.Fprintf(m.out, "\nThe demo bag is in %s:\n", m.path(folder))
	for _, entry := range entries {
		fmt.Fprintf(m.out, "  %s\n", entry.Name())
	}
	return nil
}
