package main

import (
	"fmt"
	"os"
	"path/filepath"
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

// file returns the path of the program for the platform, relative to the module.
func (p platform) file() string {
	return filepath.Join("dist", executable("gwbatch-"+p.system+"-"+p.processor, p.system))
}

func (p platform) build() command {
	return command{
		env:   append([]string{"GOOS=" + p.system, "GOARCH=" + p.processor}, withoutCgo...),
		words: []string{"go", "build", "-trimpath", "-ldflags", "-s -w", "-o", p.file(), "./cmd/gwbatch"},
	}
}

// buildPackages builds gwbatch for every platform.
func buildPackages(m *machine, args []string) error {
	if err := noMore(args); err != nil {
		return err
	}
	for _, p := range platforms() {
		if err := m.run(p.build()); err != nil {
			return err
		}
	}
	fmt.Fprintf(m.out, "\nbuilt in %s:\n", m.path("dist"))
	for _, p := range platforms() {
		info, err := os.Stat(m.path(p.file()))
		if err != nil {
			return fmt.Errorf("look at what was built: %w", err)
		}
		fmt.Fprintf(m.out, "  %-28s %5.1f MB\n", info.Name(), float64(info.Size())/1e6)
	}
	return nil
}
