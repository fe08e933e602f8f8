// Bare is a window of the toolkit with some words, an entry and a picture that changes
// colour from side to side. What it takes to start and to hold, no program with the
// toolkit does without; the task bench measures it beside ours.
package main

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

func main() {
	window := app.NewWithID("net.gussetwright.bare").NewWindow("Bare")
	side := container.NewVBox(widget.NewLabel("A bare window"), widget.NewEntry(), widget.NewButton("Do nothing", func() {}))
	picture := canvas.NewHorizontalGradient(color.NRGBA{R: 255, A: 255}, color.NRGBA{B: 255, A: 255})
	window.SetContent(container.NewBorder(nil, nil, side, nil, picture))
	window.Resize(fyne.NewSize(1200, 800))
	window.ShowAndRun()
}
