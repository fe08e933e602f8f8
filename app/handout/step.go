package handout

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"slices"
	"strconv"
	"unicode"
	"unicode/utf8"

	"gussetwright/app/creases"
	"gussetwright/app/folding"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

// Of the pictures of a step.
const (
	pictureWidth  = 84.0 // mm of the page, for both pictures
	pictureHeight = 44.0
	pictureGap    = 1.5
	pixelsPerMM   = 8.0 // some 200 to the inch
	samples       = 3
	quality       = 88   // of JPEG
	onTheWay      = 0.55 // the moment of the first picture
	cardComing    = 0.05 // the same where a card comes down into the bag, before it is hidden
)

// ground is behind the pictures.
var ground = color.RGBA{240, 238, 234, 255}

// step sets one step: its pictures, and beside them what to do.
func (m maker) step(stage int) {
	s := &m.studio.Lesson.Stages[stage]
	lead := 0.0
	label := func(word phrase.Word) string {
		text := m.say(word)
		lead = max(lead, report.Style{Size: 3.3}.Advance(text)+2)
		return text
	}
	tip, caution, creased := label("Tip"), label("Caution"), label("Creases")
	blocks := []report.Block{
		{Kind: report.Strong, Text: strconv.Itoa(stage+1) + ". " + m.tell(s.Title)},
		{Text: m.tell(s.Caption)},
	}
	add := func(name, text string) {
		if text != "" {
			blocks = append(blocks, report.Block{Kind: report.Bullet, Lead: name, Indent: lead, Text: text})
		}
	}
	add(tip, m.tell(s.Tip))
	add(caution, m.tell(s.Caution))
	kinds := m.kinds(creases.Runs(creases.Seen(s)))
	if len(kinds) > 0 && creases.ReverseUp(s) {
		kinds = slices.Insert(kinds, 0, m.say("as seen from the reverse, which is up"))
	}
	for i, kind := range kinds {
		if i > 0 {
			creased = "\u00a0" // said once
		}
		add(creased, kind)
	}
	if s.Schematic {
		blocks = append(blocks, report.Block{Kind: report.Note, Text: m.say("The way between beginning and end is drawn as a sketch, not reckoned.")})
	}
	if !s.Check.Empty() {
		blocks = append(blocks, report.Block{Kind: report.Tick, Text: m.tell(s.Check)})
	}
	m.column.Space(1.5)
	m.column.Beside(report.Picture{Image: m.pictures(stage), Quality: quality}, pictureWidth, blocks...)
}

// kinds says of each kind of crease how many there are and how long they are.
func (m maker) kinds(runs []creases.Run) []string {
	var kinds []string
	for i, r := range runs {
		count := strconv.Itoa(r.Count) + "\u00a0×\u00a0" + m.length(r.Length)
		if i > 0 && runs[i-1].Role == r.Role && runs[i-1].Fold == r.Fold {
			kinds[len(kinds)-1] += ", " + count
			continue
		}
		kinds = append(kinds, m.tell(phrase.New("%s, %s: %s", creases.Name(r.Role), creases.Fold(r.Fold), count)))
	}
	return kinds
}

// pictures returns the pictures of a stage side by side: on the way, with what is glued,
// and at its end.
func (m maker) pictures(stage int) image.Image {
	pixels := func(mm float64) int { return int(math.Round(mm * pixelsPerMM)) }
	all := image.NewRGBA(image.Rect(0, 0, pixels(pictureWidth), pixels(pictureHeight)))
	draw.Draw(all, all.Rect, image.White, image.Point{}, draw.Src)
	shots := []folding.Shot{{Moment: onTheWay, Glue: true}, {Moment: 1}}
	switch m.studio.Lesson.Stages[stage].Name {
	case "blank":
		shots = shots[1:] // nothing moves yet
	case "base-card":
		shots[0].Moment = cardComing
	}
	gap := pixels(pictureGap)
	width := (all.Rect.Dx() - gap*(len(shots)-1)) / len(shots)
	for i, shot := range shots {
		shot.Stage, shot.Lit, shot.Close, shot.Ground = stage, true, true, ground
		shot.Width, shot.Height, shot.Samples = width, all.Rect.Dy(), samples
		picture := m.studio.Take(shot)
		draw.Draw(all, image.Rect(i*(width+gap), 0, i*(width+gap)+width, all.Rect.Dy()), picture, image.Point{}, draw.Src)
		m.studio.GiveBack(picture)
	}
	return all
}

// ending says why the lesson ends before its last stage, where it does.
func (m maker) ending() {
	if m.studio.Lesson.Obstacle.Empty() {
		return
	}
	m.column.Heading(2, m.say("This bag can be folded no further"))
	m.column.Paragraph(capitalised(m.tell(m.studio.Lesson.Obstacle)) + ".")
}

// capitalised returns a sentence with a capital at its beginning.
func capitalised(sentence string) string {
	first, size := utf8.DecodeRuneInString(sentence)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + sentence[size:]
}
