package turntable

import (
	"bytes"
	"crypto/sha256"
	_ "embed" // the parts of the page
	"encoding/base64"
	"encoding/json"
	"fmt"
	"html/template"
	"image"
	"image/color"
	"io"
	"strings"

	"gussetwright/geometry/phrase"
	"gussetwright/render/solid"
)

// Page is all that the page shows.
type Page struct {
	Language string // of the texts, as in HTML, such as "en"; "" for English
	Title    string
	// Described is the bag in words, for those who do not see it; "" for Title alone.
	Described string
	Facts     []Fact // their values may have several lines
	Swatches  []Swatch
	Stops     []string // what keeps the bag from being made, in plain words
	Notes     []string // what else is still open
	// Approved is what a signature is for, line by line below Title. It stands with the
	// place to sign, on paper on the same sheet.
	Approved []string
	Cautions []string // what no signature can promise
	Words    Words    // the zero value for English
	Mesh     solid.Mesh
	Textures []Texture   // by piece; a piece without one is plain paper
	Still    image.Image // the picture where the bag cannot be turned, and in print; or nil
	Small    image.Image // the picture beside the place to sign; or nil
	Paper    solid.Paper
	Ground   color.RGBA // around the bag in daylight; the zero value for a light grey
	Accent   color.RGBA // of what can be chosen; the zero value for a blue
}

// Fact is a line about the job.
type Fact struct{ Label, Value string }

// Swatch is a colour of the print.
type Swatch struct {
	Name   string
	Colour color.RGBA // on screen
	Value  string     // as the printer knows it; "" for none
}

// Texture is the print side of a piece of the blank.
type Texture struct {
	Picture image.Image // of the whole blank, its upper edge first; nil for plain paper
	Scale   float64     // pixels per mm
	Height  float64     // of the blank, mm
}

// Our own choice of colours, where a page has none.
var (
	usualGround = color.RGBA{222, 219, 212, 255}
	usualAccent = color.RGBA{22, 93, 135, 255}
)

var (
	//go:embed web/page.html
	pageText string
	//go:embed web/page.css
	styleText string
	//go:embed web/excuse.js
	excuseText string
	//go:embed web/camera.js
	cameraScript string
	//go:embed web/mesh.js
	meshScript string
	//go:embed web/shaders.js
	shaderScript string
	//go:embed web/card.js
	cardScript string
	//go:embed web/shadow.js
	shadowScript string
	//go:embed web/painter.js
	painterScript string
	//go:embed web/table.js
	tableScript string
	//go:embed web/hand.js
	handScript string
	//go:embed web/page.js
	pageScript string
)

// script returns the parts of the script as one, so that none of its names can be
// seen from outside.
func script() string {
	parts := []string{
		cameraScript, meshScript, shaderScript, cardScript, shadowScript, painterScript, tableScript, handScript, pageScript,
	}
	return "(() => {\n\"use strict\";\n" + strings.Join(parts, "\n") + "})();\n"
}

// pageData is what the script of the page reads.
type pageData struct {
	Mesh     packedMesh     `json:"mesh"`
	Textures []*textureData `json:"textures"` // by piece
	Ink      [3]int         `json:"ink"`      // of the edges of the paper
	Shadow   [2]float64     `json:"shadow"`   // strength by day and by night
}

type textureData struct {
	URL   string  `json:"url"`
	Width float64 `json:"width"` // mm
	// Height of the picture in mm. Blank is that of the blank: the picture may end a
	// little below it, at the next whole pixel.
	Height float64 `json:"height"`
	Blank  float64 `json:"blank"`
}

// filled is what the template takes.
type filled struct {
	Page
	Swatches                          []filledSwatch
	Style                             template.CSS
	StyleHash, ExcuseHash, ScriptHash string
	Excuse, Script, Data              template.JS
	Still, Small                      template.URL
	ForPrinter                        bool // some swatch has a value
}

type filledSwatch struct {
	Swatch
	Fill string
}

// Write writes the page, the same bytes for the same page.
//
// The pictures of the blank are PNG or JPEG, whichever is smaller; JPEG of lower
// quality where they would make the page larger than 2 MB. Texts may hold anything.
func Write(w io.Writer, p Page) error {
	f, err := p.fill()
	if err != nil {
		return phrase.Errorf("write page with the bag: %s", err)
	}
	layout, err := template.New("page").Parse(pageText)
	if err != nil {
		return fmt.Errorf("write page with the bag: read its layout: %w", err)
	}
	var out bytes.Buffer
	if err := layout.Execute(&out, f); err != nil {
		return phrase.Errorf("write page with the bag: %s", err)
	}
	if _, err := out.WriteTo(w); err != nil {
		return phrase.Errorf("write page with the bag: %s", err)
	}
	return nil
}

// fill makes the page ready for its layout.
func (p Page) fill() (*filled, error) {
	if p.Language == "" {
		p.Language = "en"
	}
	if p.Words == (Words{}) {
		p.Words = English()
	}
	if p.Described == "" {
		p.Described = p.Words.Bag + ": " + p.Title
	}
	data, err := p.data()
	if err != nil {
		return nil, err
	}
	encoded, err := json.Marshal(data) // with < > & escaped, so no text can end the script
	if err != nil {
		return nil, err
	}
	f := &filled{Page: p, Data: template.JS(encoded)}
	f.Style = template.CSS(themed(styleText, chosen(p.Ground, usualGround), chosen(p.Accent, usualAccent)))
	f.Excuse, f.Script = template.JS(excuseText), template.JS(script())
	f.StyleHash, f.ExcuseHash, f.ScriptHash = hash(string(f.Style)), hash(excuseText), hash(string(f.Script))
	for _, s := range p.Swatches {
		f.Swatches = append(f.Swatches, filledSwatch{s, hex(s.Colour)})
		f.ForPrinter = f.ForPrinter || s.Value != ""
	}
	if f.Still, err = stillURL(p.Still); err != nil {
		return nil, fmt.Errorf("still picture: %w", err)
	}
	if f.Small, err = stillURL(p.Small); err != nil {
		return nil, fmt.Errorf("small picture: %w", err)
	}
	return f, nil
}

// stillURL returns the address of a picture that does not move, "" for none.
func stillURL(picture image.Image) (template.URL, error) {
	if picture == nil {
		return "", nil
	}
	data, kind, err := encode(picture, stillQuality)
	if err != nil {
		return "", err
	}
	return template.URL(dataURL(kind, data)), nil
}

func chosen(c, usual color.RGBA) color.RGBA {
	if c == (color.RGBA{}) {
		return usual
	}
	return c
}

// hash returns the hash of an inline script or style for the content security policy
// (Content Security Policy Level 3, hash sources).
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// data packs what the script reads.
func (p *Page) data() (*pageData, error) {
	mesh, err := packMesh(&p.Mesh, p.Paper)
	if err != nil {
		return nil, err
	}
	light, dark := solid.LightLook(), solid.DarkLook()
	d := &pageData{Mesh: mesh, Ink: parts(light.Ink), Shadow: [2]float64{light.Shadow, dark.Shadow}}
	pictures := make([]image.Image, len(p.Textures))
	for i, t := range p.Textures {
		if t.Picture == nil {
			continue
		}
		size := t.Picture.Bounds()
		if size.Empty() || !(t.Scale > 0) || !(t.Height > 0) {
			return nil, fmt.Errorf("texture of piece %d: %d × %d pixels, %g for each mm, blank of %g mm; all must be above 0",
				i+1, size.Dx(), size.Dy(), t.Scale, t.Height)
		}
		pictures[i] = t.Picture
	}
	urls, err := encodeAll(pictures)
	if err != nil {
		return nil, err
	}
	for i, t := range p.Textures {
		var made *textureData
		if t.Picture != nil {
			size := t.Picture.Bounds()
			made = &textureData{urls[i], float64(size.Dx()) / t.Scale, float64(size.Dy()) / t.Scale, t.Height}
		}
		d.Textures = append(d.Textures, made)
	}
	for len(d.Textures) <= mostPiece(&p.Mesh) {
		d.Textures = append(d.Textures, nil)
	}
	return d, nil
}

// mostPiece returns the greatest number of a piece, −1 for none.
func mostPiece(mesh *solid.Mesh) int {
	most := -1
	for i := range mesh.Groups {
		most = max(most, mesh.Groups[i].Piece)
	}
	return most
}
