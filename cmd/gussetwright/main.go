//go:build cgo

// Gussetwright is the window in which paper carrier bags are designed.
package main

import (
	"fyne.io/fyne/v2/app"

	_ "gussetwright/app/window"
)

func main() { app.NewWithID("net.gussetwright.app") }
