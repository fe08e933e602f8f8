package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// compareAgain builds everything a second time, from a copy of the tree in another
// folder and with nothing taken from the cache of the go command, and compares the
// files with those of the first time.
func (y yard) compareAgain(files []string) error {
	away, err := os.MkdirTemp("", "gussetwright-second-")
	if err != nil {
		return fmt.Errorf("make room for the second build: %w", err)
	}
	defer os.RemoveAll(away)
	fmt.Fprintf(y.m.out, "\nThe second build, in %s with an empty cache; it takes a while.\n", away)
	twin := *y.m
	twin.root = filepath.Join(away, "tree")
	if err := copyTree(y.m.root, twin.root); err != nil {
		return fmt.Errorf("copy the tree for the second build: %w", err)
	}
	second := yard{m: &twin, issue: y.issue, env: []string{"GOCACHE=" + filepath.Join(away, "cache")}}
	again, err := second.make()
	if err != nil {
		return err
	}
	if !slices.Equal(files, again) {
		return fmt.Errorf("the first build made %v, the second %v", files, again)
	}
	if err := sameFiles(y.m.path("dist"), twin.path("dist"), files); err != nil {
		return err
	}
	fmt.Fprintf(y.m.out, "Both builds are equal, byte for byte, in all %d files.\n", len(files))
	return nil
}

// sameFiles compares files of the same names in two folders.
func sameFiles(first, second string, names []string) error {
	var unlike []string
	for _, name := range names {
		a, err := os.ReadFile(filepath.Join(first, name))
		if err != nil {
			return fmt.Errorf("compare the two builds: %w", err)
		}
		b, err := os.ReadFile(filepath.Join(second, name))
		if err != nil {
			return fmt.Errorf("compare the two builds: %w", err)
		}
		if !bytes.Equal(a, b) {
			unlike = append(unlike, name)
		}
	}
	if len(unlike) > 0 {
		return fmt.Errorf("the second build differs from the first in %s", strings.Join(unlike, ", "))
	}
	return nil
}

// copyTree copies what a build needs of the tree: all but what was built, what tests
// read, and hidden files.
func copyTree(from, to string) error {
	return filepath.WalkDir(from, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		relative, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		hidden := strings.HasPrefix(entry.Name(), ".") && path != from
		switch {
		case entry.IsDir() && (hidden || relative == "testdata" || slices.Contains(notSource, relative)):
			return filepath.SkipDir
		case entry.IsDir():
			return os.MkdirAll(filepath.Join(to, relative), 0o777)
		case hidden || !entry.Type().IsRegular():
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(to, relative), data, 0o666)
	})
}
