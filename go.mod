module gussetwright

go 1.26.0

require (
	fyne.io/fyne/v2 v2.7.1
	github.com/fogleman/gg v1.3.0
	github.com/tdewolff/font v0.0.0-20250430140153-b654fd8acba3
	golang.org/x/image v0.47.0
)

require (
	github.com/andybalholm/brotli v1.1.1 // indirect
	github.com/golang/freetype v0.0.0-20170609003504-e2365dfdc4a0 // indirect
	github.com/tdewolff/parse/v2 v2.7.22 // indirect
	golang.org/x/sys v0.49.0 // indirect
	golang.org/x/text v0.43.0 // indirect
)
