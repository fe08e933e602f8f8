package export

import (
	"bytes"
	"fmt"

	"gussetwright/app/document"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
)

// pixelsPerMillimetre of the picture of the blank: 150 per inch, sharp on screens
// and small enough to send.
const pixelsPerMillimetre = 150 / 25.4

// previewWidth is the width in pixels of the small picture in a project file.
const previewWidth = 480

// makePictures makes one picture for each piece.
func makePictures(names []string, o *order) ([]made, error) {
	var files []made
	for i, drawing := range o.drawings {
		var out bytes.Buffer
		if err := flat.WritePNG(&out, drawing, pixelsPerMillimetre); err != nil {
			return nil, err
		}
		files = append(files, made{names[i], out.Bytes()})
	}
	return files, nil
}

// Preview returns the small PNG picture of the bag's blank that a project file
// carries.
func Preview(snapshot *document.Snapshot) ([]byte, error) {
	drawing := dieline.Sheets(&snapshot.Blank, snapshot.Spec.Date)[0]
	var out bytes.Buffer
	if err := flat.WritePNG(&out, drawing, previewWidth/drawing.Media.Width()); err != nil {
		return nil, fmt.Errorf("draw preview: %w", err)
	}
	return out.Bytes(), nil
}
