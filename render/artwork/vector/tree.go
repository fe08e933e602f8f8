package vector

import (
	"bytes"
	"context"
	"encoding/xml"
	"io"
	"strings"

	"gussetwright/geometry/phrase"
)

// node is an element of the file.
type node struct {
	name       string // in the name space of SVG
	attributes []xml.Attr
	children   []*node
	parent     *node
	text       []byte        // of a style element
	wordy      bool          // holds words itself
	weight     int           // the work of looking at it, about the bytes of its attributes
	declared   []declaration // of style, weakest first
}

// lookup returns an attribute and whether it is there.
func (n *node) lookup(name string) (string, bool) {
	for i := range n.attributes {
		if n.attributes[i].Name.Local == name {
			return n.attributes[i].Value, true
		}
	}
	return "", false
}

// attribute returns an attribute, or "" where it is missing.
func (n *node) attribute(name string) string {
	value, _ := n.lookup(name)
	return value
}

const (
	svgSpace   = "http://www.w3.org/2000/svg"
	xlinkSpace = "http://www.w3.org/1999/xlink"
)

// tree holds the elements of a file.
type tree struct {
	notes    *notebook
	root     *node
	ids      map[string]*node
	sheets   []*node // the style elements
	elements int
}

// plant reads the elements of a file. It ends with the root element; what follows
// is none of the drawing.
func plant(ctx context.Context, data []byte, notes *notebook) (*tree, error) {
	if err := checkBytes(data); err != nil {
		return nil, err
	}
	t := &tree{notes: notes, ids: map[string]*node{}}
	decoder := xml.NewDecoder(bytes.NewReader(data))
	decoder.CharsetReader = charset
	var at *node
	for tokens := 0; t.root == nil || at != nil; tokens++ {
		if tokens%256 == 0 && ctx.Err() != nil {
			return nil, ctx.Err()
		}
		token, err := decoder.Token()
		if err == io.EOF {
			return nil, phrase.Errorf("the file holds no drawing: export it again as SVG")
		}
		if err != nil {
			return nil, broken(err)
		}
		if at, err = t.take(token, at, decoder); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// broken says that the text of the file is no XML.
func broken(err error) error {
	return phrase.Errorf("the file is broken (%s): export it again as SVG", err)
}

// checkBytes looks at what can be told before anything is unpacked.
func checkBytes(data []byte) error {
	switch {
	case len(data) > mostBytes:
		return phrase.Errorf("the file has %d bytes, over %d, %s; embed smaller images or simplify its paths", len(data), mostBytes, ErrTooMuch)
	case bytes.HasPrefix(data, []byte{0x1f, 0x8b}):
		return phrase.Errorf("the file is a packed SVG (SVGZ): save it as plain SVG")
	case bytes.HasPrefix(data, []byte{0xfe, 0xff}), bytes.HasPrefix(data, []byte{0xff, 0xfe}):
		return phrase.Errorf("the file is written in UTF-16: save it as UTF-8")
	case len(bytes.TrimSpace(data)) == 0:
		return phrase.Errorf("the file is empty: export it again as SVG")
	case !bytes.ContainsRune(data[:min(len(data), 4096)], '<'):
		return phrase.Errorf("the file is no SVG, as it does not begin like one: export it again as SVG")
	}
	// An element may have as many attributes as it likes, all of which are unpacked
	// at once; each of them has an equals sign and a quote.
	if count := bytes.Count(data, []byte(`="`)) + bytes.Count(data, []byte(`='`)); count > mostAttributes {
		return tooMany("attributes", mostAttributes, "simplify the drawing")
	}
	return nil
}

// take adds a token below the element at, and returns where to go on.
func (t *tree) take(token xml.Token, at *node, decoder *xml.Decoder) (*node, error) {
	switch token := token.(type) {
	case xml.Directive:
		if bytes.Contains(bytes.ToUpper(token), []byte("ENTITY")) {
			return nil, phrase.Errorf("the file declares entities of its own, which are not read: save it without entities (as plain SVG)")
		}
	case xml.ProcInst:
		if token.Target == "xml-stylesheet" {
			t.notes.add(outsideLink)
		}
	case xml.StartElement:
		return t.open(token, at, decoder)
	case xml.CharData:
		if at != nil {
			at.say(token)
		}
	case xml.EndElement:
		return at.parent, nil
	}
	return at, nil
}

func (n *node) say(text xml.CharData) {
	if n.name == "style" {
		n.text = append(n.text, text...)
	} else if !n.wordy {
		n.wordy = len(bytes.TrimSpace(text)) > 0
	}
}

// open adds an element, or skips it with all that it holds.
func (t *tree) open(token xml.StartElement, at *node, decoder *xml.Decoder) (*node, error) {
	if t.elements++; t.elements > mostElements {
		return nil, tooMany("elements", mostElements, "simplify the drawing")
	}
	space := token.Name.Space
	if at == nil {
		if token.Name.Local != "svg" || space != svgSpace && space != "" {
			return nil, phrase.Errorf("the file is no SVG, as it holds an element %.40q instead of a drawing: export it again as SVG", token.Name.Local)
		}
	} else if space != svgSpace && space != "" {
		return at, t.skip(decoder)
	}
	n := &node{name: token.Name.Local, parent: at}
	t.keep(n, token.Attr)
	if at == nil {
		t.root = n
		return n, nil
	}
	at.children = append(at.children, n)
	if depth(n) > mostDepth {
		return nil, tooMany("elements within each other", mostDepth, "ungroup what needs no group")
	}
	t.remark(n)
	return n, nil
}

func depth(n *node) (steps int) {
	for ; n != nil; n = n.parent {
		steps++
	}
	return steps
}

// skip reads to the end of the element that was just begun. It counts what it
// skips, as that is read all the same.
func (t *tree) skip(decoder *xml.Decoder) error {
	for open := 1; open > 0; {
		token, err := decoder.Token()
		if err != nil {
			return broken(err)
		}
		switch token.(type) {
		case xml.StartElement:
			open++
			if t.elements++; t.elements > mostElements {
				return tooMany("elements", mostElements, "save the file as plain SVG")
			}
		case xml.EndElement:
			open--
		}
	}
	return nil
}

// keep keeps the attributes of SVG and drops those of drawing programs.
func (t *tree) keep(n *node, attributes []xml.Attr) {
	for _, a := range attributes {
		switch space := a.Name.Space; {
		case space == "" && a.Name.Local == "xmlns", space != "" && a.Name.Local != "href":
			continue
		case space != "" && space != xlinkSpace && space != "xlink":
			continue
		case strings.HasPrefix(a.Name.Local, "on") && space == "":
			t.notes.add(script)
			continue
		}
		n.attributes = append(n.attributes, a)
		n.weight += 32
		if name := a.Name.Local; name != "d" && name != "points" && name != "href" { // those are read once
			n.weight += len(a.Value)
		}
		if a.Name.Local == "id" && t.ids[a.Value] == nil {
			t.ids[a.Value] = n
		}
	}
}

// remark notes what is never shown, wherever it stands.
func (t *tree) remark(n *node) {
	switch n.name {
	case "style":
		t.sheets = append(t.sheets, n)
	case "script", "handler":
		t.notes.add(script)
	case "animate", "animateColor", "animateMotion", "animateTransform", "set", "discard":
		t.notes.add(animation)
	}
}

// charset reads the few encodings besides UTF-8 that old programs write, in which
// every byte is a letter. What of them does not agree stands in texts only.
func charset(label string, input io.Reader) (io.Reader, error) {
	switch strings.ToLower(label) {
	case "us-ascii", "ascii", "iso-8859-1", "iso-8859-15", "latin1", "windows-1252":
		return &latin{from: input}, nil
	}
	return nil, phrase.Errorf("it is written in %.40q: save it as UTF-8", label)
}

// latin turns bytes into the letters with the same number.
type latin struct {
	from io.Reader
	left []byte
}

// Read implements io.Reader.
func (l *latin) Read(into []byte) (int, error) {
	if len(l.left) == 0 {
		var raw [512]byte
		n, err := l.from.Read(raw[:])
		if n == 0 {
			return 0, err
		}
		for _, b := range raw[:n] {
			l.left = append(l.left, string(rune(b))...)
		}
	}
	n := copy(into, l.left)
	l.left = l.left[n:]
	return n, nil
}
