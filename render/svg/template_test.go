package svg_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

// In a template the artwork layer is empty and lies beneath the lines, which are
// locked; the page is that of the drawing.
func TestTemplateHasAnEmptyLayerBeneathLockedLines(t *testing.T) {
	page := geometry.RectAt(-3, -3, 106, 56)
	line := geometry.Polygon(geometry.Vec2{}, geometry.Vec2{X: 100}, geometry.Vec2{X: 100, Y: 50})
	var out bytes.Buffer
	err := svg.WriteTemplate(&out, scene.Drawing{
		Title: "Tea", Media: page, Bleed: page, Trim: geometry.RectAt(0, 0, 100, 50),
		Items: []scene.Item{scene.Stroke{Role: scene.Cutting, Path: line, Width: 0.35}},
	}, nil)
	if err != nil {
		t.Fatal(err)
	}
	var path []string // of the groups that are open
	inside := map[string][]string{}
	decoder := xml.NewDecoder(&out)
	for {
		token, err := decoder.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			name := token.Name.Local
			for _, attribute := range token.Attr {
				switch attribute.Name.Local {
				case "id":
					name = attribute.Value
				case "viewBox":
					if attribute.Value != "0 0 106 56" {
						t.Errorf("viewBox %q", attribute.Value)
					}
				case "insensitive":
					inside["locked"] = append(inside["locked"], name)
				}
			}
			inside[strings.Join(path, "/")] = append(inside[strings.Join(path, "/")], name)
			path = append(path, name)
		case xml.EndElement:
			path = path[:len(path)-1]
		}
	}
	for where, want := range map[string]string{"svg": "title desc artwork die", "svg/artwork": "title", "svg/die": "title cutting", "locked": "die"} {
		if got := strings.Join(inside[where], " "); got != want {
			t.Errorf("%s holds %q, want %q", where, got, want)
		}
	}
}
