package report_test

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/report"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

func pages(t testing.TB, c *report.Column) []report.Page {
	t.Helper()
	list, err := c.Pages()
	if err != nil {
		t.Fatal(err)
	}
	for i, page := range list {
		if err := page.Check(); err != nil {
			t.Errorf("page %d: %v", i+1, err)
		}
	}
	return list
}

// texts returns the texts of a page in their order.
func texts(page report.Page) []report.Text {
	var list []report.Text
	for _, item := range page.Items {
		if text, isText := item.(report.Text); isText {
			list = append(list, text)
		}
	}
	return list
}

// box returns where the ink of a text is, from the tallest capital to the baseline.
func box(text report.Text) geometry.Rect {
	width := typeface.Advance(text.Text, text.Size, text.Bold)
	left := text.At.X - width*map[scene.Anchor]float64{scene.Start: 0, scene.Middle: 0.5, scene.End: 1}[text.Align]
	return geometry.RectAt(left, text.At.Y, width, 0.72*text.Size)
}

// inside fails for everything that sticks out of the margins.
func inside(t *testing.T, list []report.Page, margin float64) {
	t.Helper()
	for i, page := range list {
		frame := geometry.RectAt(0, 0, page.Width, page.Height).Inset(margin - 1e-6)
		for _, item := range page.Items {
			var place geometry.Rect
			switch item := item.(type) {
			case report.Text:
				place = box(item)
			case report.Picture:
				place = item.Rect
			case report.Box:
				place = item.Rect
			case report.Rule:
				place = item.Path().Bounds()
			}
			if !frame.Contains(place.Min) || !frame.Contains(place.Max) {
				t.Errorf("page %d: %+v sticks out of the margins", i+1, item)
			}
		}
	}
}

// apart fails where two texts lie over each other.
func apart(t *testing.T, list []report.Page) {
	t.Helper()
	for i, page := range list {
		all := texts(page)
		for j, first := range all {
			for _, second := range all[j+1:] {
				a, b := box(first), box(second)
				if a.Min.X < b.Max.X-0.01 && b.Min.X < a.Max.X-0.01 && a.Min.Y < b.Max.Y-0.01 && b.Min.Y < a.Max.Y-0.01 {
					t.Errorf("page %d: %q lies over %q", i+1, first.Text, second.Text)
				}
			}
		}
	}
}

var photo = image.NewGray(image.Rect(0, 0, 40, 30))

// Whatever is laid out, every word is on the pages once, within the
// margins and over no other.
func TestNothingIsLost(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	for round := range 60 {
		word := 0
		words := func(most int) string {
			var list []string
			for range 1 + random.IntN(most) {
				word++
				list = append(list, fmt.Sprintf("w%dq%s", word, strings.Repeat("x", random.IntN(12)*random.IntN(12))))
			}
			return strings.Join(list, " ")
		}
		paper := []report.Paper{report.A4(), report.Letter().Landscape(), {Width: 90, Height: 80}}[round%3]
		c := report.NewColumn(report.Layout{Paper: paper, Margin: 12, Header: "Header", Mark: "Mark", Footer: "Footer"})
		for range 12 {
			switch random.IntN(9) {
			case 0:
				c.Heading(1+random.IntN(3), words(6))
			case 1:
				c.Paragraph(words(150))
			case 2:
				c.Bullets(words(20), words(3))
			case 3:
				c.Steps(8, words(20), words(3), words(3))
			case 4:
				c.Rows(report.Row{Label: words(3), Value: words(30)}, report.Row{Label: words(3), Value: words(2)})
			case 5:
				c.Pictures(40, report.Figure{Picture: report.Picture{Image: photo}, Caption: words(8)}, report.Figure{Picture: report.Picture{Image: photo}, Caption: words(3)})
			case 6:
				c.Beside(report.Picture{Image: photo}, 50, report.Block{Kind: report.Strong, Text: words(4)}, report.Block{Kind: report.Tick, Text: words(40)})
			case 7:
				c.Table(report.Table{Columns: []report.TableColumn{{}, {Numbers: true}}, Rows: [][]string{{words(60), words(2)}, {words(1), words(3), words(4)}, {}}})
			case 8:
				c.Swatches(report.Swatch{Name: words(3), Value: words(3), Colour: report.RGB(1, 2, 3)}, report.Swatch{Name: words(20), Value: words(9)})
				c.Fields(words(2), words(9))
				c.WritingLines(2)
			}
		}
		list := pages(t, c)
		inside(t, list, 12)
		apart(t, list)
		everyWord(t, list, word)
	}
}

func everyWord(t *testing.T, list []report.Page, words int) {
	t.Helper()
	var all strings.Builder
	for _, page := range list {
		for _, text := range texts(page) {
			all.WriteString(text.Text + " ")
		}
	}
	for i := range words {
		if found := strings.Count(all.String(), fmt.Sprintf("w%dq", i+1)); found != 1 {
			t.Errorf("word %d is %d times on the pages", i+1, found)
		}
	}
}

func TestPagesAreNumbered(t *testing.T) {
	c := report.NewColumn(report.Layout{Number: func(page, of int) string { return fmt.Sprintf("page %d of %d", page, of) }})
	c.Paragraph("one")
	c.Break()
	c.Break() // an empty page is not left behind
	c.Paragraph("two")
	list := pages(t, c)
	if len(list) != 2 {
		t.Fatalf("%d pages, want 2", len(list))
	}
	for i, page := range list {
		last := texts(page)[len(texts(page))-1]
		if want := fmt.Sprintf("page %d of 2", i+1); last.Text != want || last.Align != scene.End {
			t.Errorf("page %d says %q at its foot, want %q", i+1, last.Text, want)
		}
		if page.Width != 210 || page.Height != 297 { // ISO 216
			t.Errorf("page of %g × %g mm", page.Width, page.Height)
		}
	}
}

// A heading is never the last on its page, whatever follows it.
func TestHeadingsStayWithWhatFollows(t *testing.T) {
	follow := map[string]func(c *report.Column){
		"paragraph": func(c *report.Column) { c.Paragraph(strings.Repeat("word ", 60)) },
		"picture":   func(c *report.Column) { c.Pictures(40, report.Figure{Picture: report.Picture{Image: photo}}) },
		"table": func(c *report.Column) {
			c.Table(report.Table{Columns: []report.TableColumn{{Title: "Title"}}, Rows: [][]string{{"a"}, {"b"}}})
		},
		"rows": func(c *report.Column) { c.Rows(report.Row{Label: "a", Value: "b"}) },
	}
	for name, set := range follow {
		for filled := 0.0; filled < 260; filled += 3.7 {
			c := report.NewColumn(report.Layout{})
			c.Reserve(filled)
			c.Heading(2, "Heading")
			c.Heading(3, "Below it")
			set(c)
			for i, page := range pages(t, c) {
				all := texts(page)
				at := slices.IndexFunc(all, func(text report.Text) bool { return text.Text == "Below it" })
				if at < 0 {
					continue
				}
				if all[at-1].Text != "Heading" {
					t.Fatalf("%s after %.1f mm: the headings part", name, filled)
				}
				below := 0
				for _, item := range page.Items {
					if p, isPicture := item.(report.Picture); isPicture && p.Rect.Max.Y < all[at].At.Y {
						below++
					}
				}
				if len(all)-at-2+below < 1 { // but for the number of the page
					t.Fatalf("%s after %.1f mm: page %d ends with its heading", name, filled, i+1)
				}
			}
		}
	}
}

func TestTableGoesOn(t *testing.T) {
	var rows [][]string
	for i := range 90 {
		rows = append(rows, []string{fmt.Sprintf("row %d", i), fmt.Sprint(i * i)})
	}
	c := report.NewColumn(report.Layout{})
	c.Table(report.Table{Columns: []report.TableColumn{{Title: "Name"}, {Title: "Sum", Numbers: true}}, Rows: rows})
	list := pages(t, c)
	if len(list) < 2 {
		t.Fatal("all on one page")
	}
	right := math.NaN()
	for i, page := range list {
		all := texts(page)
		if !all[0].Bold || all[0].Text != "Name" || all[1].Text != "Sum" {
			t.Errorf("page %d begins with %q and %q, not with the titles", i+1, all[0].Text, all[1].Text)
		}
		for j := 1; j < len(all)-1; j += 2 {
			if math.IsNaN(right) {
				right = all[j].At.X
			}
			if all[j].Align != scene.End || all[j].At.X != right {
				t.Errorf("page %d: %q does not end where the numbers above it do", i+1, all[j].Text)
			}
		}
	}
}

func TestLayoutsWithoutRoom(t *testing.T) {
	for name, layout := range map[string]report.Layout{
		"margins":    {Margin: 100},
		"header":     {Header: strings.Repeat("many words ", 2000)},
		"tiny paper": {Paper: report.Paper{Width: 40, Height: 30}},
		"no number":  {Margin: math.NaN()},
	} {
		c := report.NewColumn(layout)
		c.Heading(1, "Title")
		c.Paragraph("words and words")
		c.Pictures(30, report.Figure{Picture: report.Picture{Image: photo}, Caption: "caption"})
		c.Table(report.Table{Rows: [][]string{{"a", "b"}}})
		c.Beside(report.Picture{Image: photo}, 30, report.Block{Text: "x"})
		c.Swatches(report.Swatch{Name: "a"})
		c.Fields("a")
		if _, err := c.Pages(); err == nil || !strings.Contains(err.Error(), "choose larger paper") {
			t.Errorf("%s: the error is %v", name, err)
		}
	}
}
