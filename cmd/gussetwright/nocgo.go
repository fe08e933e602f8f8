//go:build !cgo

// Gussetwright is the window in which paper carrier bags are designed.
package main

import (
	"fmt"
	"os"
)

func main() {
	if answer(os.Stdout, os.Args[1:]) {
		return
	}
	fmt.Fprintln(os.Stderr, "gussetwright: built without cgo, so there is no window; install a C compiler and build with CGO_ENABLED=1, or use gwbatch")
	os.Exit(2)
}
