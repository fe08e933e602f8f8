// Package creasefile writes crease patterns as FOLD 1.2, the open JSON format of
// origami research, for programs that fold and check them.
package creasefile

import (
	"encoding/json"
	"fmt"
	"io"
	"math"

	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

// frame holds the keys of one FOLD frame that we write.
type frame struct {
	Title       string       `json:"frame_title,omitempty"`
	Description string       `json:"frame_description,omitempty"`
	Classes     []string     `json:"frame_classes"`
	Attributes  []string     `json:"frame_attributes"`
	Unit        string       `json:"frame_unit"`
	Vertices    [][2]float64 `json:"vertices_coords"`
	Edges       [][2]int     `json:"edges_vertices"`
	Assignment  []string     `json:"edges_assignment"`
	FoldAngle   []float64    `json:"edges_foldAngle"`
	Role        []string     `json:"edges_gussetwright:role"`
	Faces       [][]int      `json:"faces_vertices"`
}

// file is a FOLD file: its first frame stands at the top level.
type file struct {
	Spec    float64  `json:"file_spec"`
	Creator string   `json:"file_creator"`
	Title   string   `json:"file_title,omitempty"`
	Classes []string `json:"file_classes"`
	frame
	Frames []frame `json:"file_frames,omitempty"`
}

const description = "Ideal sheet without thickness, seen from the print side, y up; " +
	"the seam relief and the holes are left out. Fold angles are those of the bag packed flat."

// Write writes the pieces of one bag: the first as the file's own frame, a
// second one as a further frame.
func Write(w io.Writer, title string, pieces []blank.Pattern) error {
	if len(pieces) == 0 {
		return fmt.Errorf("write FOLD file %q: there is no piece", title)
	}
	out := file{Spec: 1.2, Creator: "Gussetwright", Title: title, Classes: []string{"singleModel"}}
	out.frame = newFrame(&pieces[0])
	for i := range pieces[1:] {
		out.Classes = []string{"multiModel"}
		out.Frames = append(out.Frames, newFrame(&pieces[i+1]))
	}
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(out); err != nil {
		return phrase.Errorf("write FOLD file %q: %s", title, err)
	}
	return nil
}

func newFrame(pattern *blank.Pattern) frame {
	f := frame{
		Title: pattern.Name, Description: description, Classes: []string{"creasePattern"},
		Attributes: []string{"2D"}, Unit: "mm", Faces: pattern.Faces,
	}
	for _, p := range pattern.Points {
		f.Vertices = append(f.Vertices, [2]float64{round(p.X), round(p.Y)})
	}
	for _, edge := range pattern.Edges {
		letter, angle := assignment(edge)
		f.Edges = append(f.Edges, [2]int{edge.A, edge.B})
		f.Assignment = append(f.Assignment, letter)
		f.FoldAngle = append(f.FoldAngle, angle)
		f.Role = append(f.Role, string(edge.Role))
	}
	return f
}

// assignment returns the FOLD letter of an edge and its fold angle in degrees,
// valley positive, with the bag packed flat.
func assignment(edge blank.PatternEdge) (letter string, angle float64) {
	switch edge.Fold {
	case blank.Mountain:
		return "M", -180
	case blank.Valley:
		return "V", 180
	}
	return "B", 0
}

// round drops the digits below a nanometre that only the arithmetic made.
func round(v float64) float64 { return math.Round(v*1e9) / 1e9 }
