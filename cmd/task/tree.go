package main

import (
	"bytes"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// notSource are top folders without source of ours.
var notSource = []string{"bin", "dist"}

// goFiles returns the Go files of the module, with paths relative to root.
func goFiles(root string) ([]string, error) {
	var files []string
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		relative, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		if entry.IsDir() {
			hidden := strings.HasPrefix(entry.Name(), ".") && path != root
			if hidden || entry.Name() == "node_modules" || slices.Contains(notSource, relative) {
				return filepath.SkipDir
			}
			return nil
		}
		if strings.HasSuffix(path, ".go") {
			files = append(files, relative)
		}
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("list the Go files in %s: %w", root, err)
	}
	return files, nil
}

// unformattedFiles returns the Go files that gofmt would change, with paths
// relative to root. A file that is no Go at all is an error.
func unformattedFiles(root string) ([]string, error) {
	files, err := goFiles(root)
	if err != nil {
		return nil, err
	}
	var unformatted []string
	for _, file := range files {
		source, err := os.ReadFile(filepath.Join(root, file))
		if err != nil {
			return nil, fmt.Errorf("check the form of a Go file: %w", err)
		}
		formatted, err := format.Source(source)
		if err != nil {
			return nil, fmt.Errorf("check the form of %s: %w", file, err)
		}
		if !bytes.Equal(source, formatted) {
			unformatted = append(unformatted, file)
		}
	}
	return unformatted, nil
}
