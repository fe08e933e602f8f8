package artstep

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

func TestGolden(t *testing.T) {
	for name, look := range map[string]settings.Appearance{"light": settings.Light, "dark": settings.Dark} {
		b := newBench(t, look, 1, several()...)
		b.Choose(6)
		geomtest.GoldenPicture(t, "artstep/"+name+".png", b.window.Canvas().Capture(), 0.01)
	}
	geomtest.Golden(t, "artstep/none.xml", []byte(test.RenderToMarkup(newBench(t, settings.Light, 1).window.Canvas())))
}

// How it stands with each piece is said in words. The front of the default bag is
// 240 × 360 mm with a bleed of 3 mm: 900 pixels on 246 mm are 92.9 to the inch
// (900 / 246 × 25.4), and a picture made for 300 that is shown half as large again
// has 200.
func TestConditions(t *testing.T) {
	b := newBench(t, settings.Light, 1, several()...)
	want := []struct {
		text string
		sign sign
	}{
		{"Sharp at any size", fine},
		{"The bag has no such place. Choose another.", warning},
		{"Being opened…", waiting},
		{"It is cut short; save it again where it was drawn.", failed},
		{"200 ppi, soft", warning},
		{"93 ppi, too coarse", failed},
		{"300 ppi, sharp", fine},
	}
	for i, row := range b.list.rows {
		if row.state.Text() != want[i].text || row.sign != want[i].sign {
			t.Errorf("row %d: %q with sign %d, want %q with %d", i, row.state.Text(), row.sign, want[i].text, want[i].sign)
		}
	}
	if top := b.list.rows[0]; top.name.Text() != "leaf.pdf" || top.placeText.Text() != "Both gussets alike" || top.picture.Image == nil {
		t.Errorf("the topmost is %q on %q", top.name.Text(), top.placeText.Text())
	}
	signs := map[fyne.Resource]bool{}
	for _, s := range []sign{waiting, fine, warning, failed} {
		signs[s.resource()] = true
	}
	if len(signs) != 4 {
		t.Error("signs look alike")
	}
}

func TestKeysOfTheList(t *testing.T) {
	first, second, third := bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("small.jpg", "back"), bag.NewArtwork("leaf.pdf", "front")
	b := newBench(t, settings.Light, 1, first, second, third)
	for _, press := range []struct {
		key  fyne.KeyName
		want int
	}{{fyne.KeyUp, 1}, {fyne.KeyUp, 2}, {fyne.KeyUp, 2}, {fyne.KeyDown, 1}, {fyne.KeyEnd, 0}, {fyne.KeyDown, 0}, {fyne.KeyHome, 2}} {
		b.key(press.key)
		if b.chosen != press.want || b.look.Artwork() != press.want {
			t.Fatalf("%s chooses %d, and %d in the panes; want %d", press.key, b.chosen, b.look.Artwork(), press.want)
		}
	}
	shift := func(key fyne.KeyName) {
		b.list.TypedShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierAlt})
	}
	names := func() (text string) {
		for _, piece := range b.pieces() {
			text += strings.TrimSuffix(piece.File, ".jpg") + " "
		}
		return text
	}
	shift(fyne.KeyUp) // is on top already
	shift(fyne.KeyDown)
	if got := names(); got != "front leaf.pdf small " || b.chosen != 1 {
		t.Errorf("order %q, chosen %d", got, b.chosen)
	}
	shift(fyne.KeyUp)
	if got := names(); got != "front small leaf.pdf " || b.chosen != 2 {
		t.Errorf("order %q, chosen %d", got, b.chosen)
	}
	b.key(fyne.KeyDelete)
	if got := names(); got != "front small " || b.chosen != 1 {
		t.Errorf("after removing: %q, chosen %d", got, b.chosen)
	}
	if got := b.undone(); got != "take out leaf.pdf" {
		t.Errorf("undo %q", got)
	}
	b.key(fyne.KeyDelete)
	b.key(fyne.KeyDelete)
	b.key(fyne.KeyDelete)
	b.key(fyne.KeyDelete)
	if len(b.pieces()) != 0 || b.look.Artwork() != focus.NoArtwork || b.entries.Visible() {
		t.Errorf("%d pieces, chosen %d", len(b.pieces()), b.look.Artwork())
	}
	b.key(fyne.KeyUp)
}

func TestPointerOnTheList(t *testing.T) {
	b := newBench(t, settings.Light, 1, bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("leaf.pdf", "back"))
	test.TapAt(b.list, fyne.NewPos(60, 10))
	if b.chosen != 1 || b.window.Canvas().Focused() != b.list {
		t.Errorf("chosen %d, focus %T", b.chosen, b.window.Canvas().Focused())
	}
	b.look.ChooseArtwork(0) // in a pane
	if b.chosen != 0 || b.entries.title.Text() != "front.jpg" {
		t.Errorf("chosen %d, entries of %s", b.chosen, b.entries.title.Text())
	}
	b.list.MouseIn(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(60, 10)}})
	if b.list.over != 0 || !b.list.overGround.Visible() {
		t.Error("the row under the pointer does not light up")
	}
	b.list.MouseOut()
	if b.list.overGround.Visible() {
		t.Error("the light stays")
	}
}

func TestLeaving(t *testing.T) {
	b := newBench(t, settings.Light, 1, bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("leaf.pdf", "back"))
	b.Choose(1)
	b.Leave()
	if b.look.Artwork() != focus.NoArtwork {
		t.Error("the frame stays when another step is shown")
	}
	b.Enter()
	if b.look.Artwork() != 1 {
		t.Errorf("coming back chooses %d", b.look.Artwork())
	}
}

// tall returns all objects under one.
func tall(object fyne.CanvasObject, found []fyne.CanvasObject) []fyne.CanvasObject {
	found = append(found, object)
	if holder, is := object.(interface{ Objects() []fyne.CanvasObject }); is {
		for _, inner := range holder.Objects() {
			found = tall(inner, found)
		}
	}
	return found
}

func (b *bench) number(label string) *entry.Number {
	b.t.Helper()
	for _, object := range tall(b.Column, nil) {
		if number, is := object.(*entry.Number); is {
			if title, _ := number.Explanation(); title == label {
				return number
			}
		}
	}
	b.t.Fatalf("no number %q", label)
	return nil
}

func (b *bench) choice(label string) *entry.Choice {
	b.t.Helper()
	for _, object := range tall(b.Column, nil) {
		if choice, is := object.(*entry.Choice); is {
			if title, _ := choice.Explanation(); title == label {
				return choice
			}
		}
	}
	b.t.Fatalf("no choice %q", label)
	return nil
}

func (b *bench) button(label string) *widget.Button {
	b.t.Helper()
	for _, object := range tall(b.Column, nil) {
		if button, is := object.(*widget.Button); is && button.Text == label {
			return button
		}
	}
	b.t.Fatalf("no button %q", label)
	return nil
}

func TestEntriesChangeThePiece(t *testing.T) {
	b := newBench(t, settings.Light, 1, bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("leaf.pdf", "back"))
	b.Choose(1)
	enter := func(label, text string) func() {
		return func() {
			number := b.number(label)
			test.Type(number.Focusable(), text)
			number.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			if number.Message() != "" {
				t.Errorf("%s complains: %s", label, number.Message())
			}
		}
	}
	pick := func(label, value string) func() { return func() { b.choice(label).Pick(value) } }
	tap := func(label string) func() { return func() { test.Tap(b.button(label)) } }
	for _, change := range []struct {
		do   func()
		want func(*bag.Artwork)
		undo string
	}{
		{enter("X", "1 in"), func(a *bag.Artwork) { a.X = 25.4 }, "move leaf.pdf"},
		{enter("Y", "-12,5"), func(a *bag.Artwork) { a.Y = -12.5 }, "move leaf.pdf"},
		{enter("Scale", "33.3"), func(a *bag.Artwork) { a.Scale = 0.333 }, "scale leaf.pdf"},
		{enter("Turn", "45"), func(a *bag.Artwork) { a.Turn = 45 }, "turn leaf.pdf"},
		{tap("90° left"), func(a *bag.Artwork) { a.Turn = 90 }, "turn leaf.pdf"},
		{tap("90° right"), func(a *bag.Artwork) { a.Turn = -90 }, "turn leaf.pdf"},
		{enter("Opacity", "40"), func(a *bag.Artwork) { a.Opacity = 40 }, "opacity of leaf.pdf"},
		{enter("Page", "3"), func(a *bag.Artwork) { a.Page = 3 }, "page of leaf.pdf"},
		{pick("Place", "gussets"), func(a *bag.Artwork) { a.On = "gussets" }, "place leaf.pdf on gussets"},
		{pick("Fit", "contain"), func(a *bag.Artwork) { a.Fit = bag.FitContain }, "fit of leaf.pdf"},
		{pick("Repeat", "half-drop"), func(a *bag.Artwork) { a.Repeat = bag.RepeatHalfDrop }, "repeat of leaf.pdf"},
		{pick("Holds", "ean-13"), func(a *bag.Artwork) { a.Holds = bag.HoldsEAN13 }, "content of leaf.pdf"},
		{func() {
			for _, object := range tall(b.Column, nil) {
				if turn, is := object.(*entry.Switch); is {
					turn.Focusable().TypedRune(' ')
				}
			}
		}, func(a *bag.Artwork) { a.Mirror = true }, "mirror leaf.pdf"},
	} {
		want := bag.NewArtwork("leaf.pdf", "back")
		change.want(&want)
		change.do()
		if got := b.pieces()[1]; got != want {
			t.Errorf("%s: %+v, want %+v", change.undo, got, want)
		}
		if got := b.undone(); got != change.undo {
			t.Errorf("undo %q, want %q", got, change.undo)
		}
		if got := b.pieces()[1]; got != bag.NewArtwork("leaf.pdf", "back") {
			t.Fatalf("%s is more than one step: %+v", change.undo, got)
		}
	}
	if len(b.source.calls) != 0 {
		t.Errorf("asked %q", b.source.calls)
	}
}

// What is typed for one piece goes to that one, also when another is clicked next.
func TestTypingAndChoosingAnother(t *testing.T) {
	b := newBench(t, settings.Light, 1, bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("leaf.pdf", "back"))
	number := b.number("X")
	b.window.Canvas().Capture() // only what is drawn can have the focus
	b.window.Canvas().Focus(number.Focusable())
	test.Type(number.Focusable(), "7")
	test.TapAt(b.list, fyne.NewPos(60, 10))
	if got := b.pieces(); got[0].X != 7 || got[1].X != 0 || number.Text() != "0" {
		t.Errorf("x %g and %g, shown %s", got[0].X, got[1].X, number.Text())
	}
}

func TestButtons(t *testing.T) {
	b := newBench(t, settings.Light, 1, bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("leaf.pdf", "back"))
	if b.entries.forward.Disabled() || !b.entries.back.Disabled() {
		t.Error("the lowest piece goes back, or does not come forward")
	}
	test.Tap(b.button("Bring forward"))
	if b.pieces()[1].File != "front.jpg" || b.chosen != 1 || !b.entries.forward.Disabled() {
		t.Errorf("order %+v, chosen %d", b.pieces(), b.chosen)
	}
	test.Tap(b.button("Send back"))
	test.Tap(b.button("Remove"))
	if got := b.pieces(); len(got) != 1 || got[0].File != "leaf.pdf" {
		t.Errorf("left are %+v", got)
	}
}

func TestPageIsAskedForOnlyWhereThereAreSeveral(t *testing.T) {
	b := newBench(t, settings.Light, 1, bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("leaf.pdf", "back"))
	if b.entries.pageBox.Visible() {
		t.Error("a picture has pages")
	}
	b.Choose(1)
	if !b.entries.pageBox.Visible() || b.entries.facts.Text() != "PDF, 120 × 80 mm, 5 pages" {
		t.Errorf("page shown %v, facts %q", b.entries.pageBox.Visible(), b.entries.facts.Text())
	}
	b.set.SetUnit(geometry.Centimetre)
	b.Choose(0)
	if got := b.entries.facts.Text(); got != "JPEG, 24.6 × 36.6 cm, 2906 × 4323 pixels" {
		t.Errorf("facts %q", got)
	}
}

// The bag offers only places that it has, and the present one.
func TestPlacesFollowTheBag(t *testing.T) {
	b := newBench(t, settings.Light, 1, bag.NewArtwork("front.jpg", "gusset-left"))
	offered := func() string {
		var values []string
		for _, option := range placesOn(&b.doc.State().Snapshot.Blank, b.pieces()[0].On) {
			values = append(values, option.Value)
		}
		return " " + strings.Join(values, " ") + " "
	}
	if got := offered(); !strings.Contains(got, " gusset-right ") || strings.Contains(got, " back-piece ") {
		t.Errorf("offered%s", got)
	}
	spec := bag.OfSize(240, 0, 360)
	spec.Artwork = b.pieces()
	b.doc.Set(spec)
	if got := offered(); strings.Contains(got, " gusset-right ") || !strings.Contains(got, " gusset-left ") {
		t.Errorf("a flat bag offers%s", got)
	}
	if got := b.list.rows[0].state.Text(); got != "The bag has no such place. Choose another." {
		t.Errorf("the row says %q", got)
	}
}

func TestProfile(t *testing.T) {
	b := newBench(t, settings.Light, 1)
	if got := b.profile.name.Text(); !strings.HasPrefix(got, "Without a profile the file is written without an output intent.") || b.profile.takeOut.Visible() {
		t.Errorf("says %q", got)
	}
	spec := b.doc.State().Spec
	spec.Profile = "coated.icc"
	b.doc.Set(spec)
	if got := b.profile.name.Text(); got != "coated.icc" || !strings.Contains(b.profile.message.Text(), "missing") {
		t.Errorf("says %q, %q", got, b.profile.message.Text())
	}
	test.Tap(b.button("Take out"))
	if b.doc.State().Spec.Profile != "" || b.doc.State().Undo.Path != "profile" {
		t.Errorf("undo %+v", b.doc.State().Undo)
	}
}

// Nothing is cut off, with letters of every size.
func TestNothingIsCutOff(t *testing.T) {
	for _, scale := range []float64{0.8, 1, 1.5} {
		b := newBench(t, settings.Light, scale, several()...)
		for i := range several() {
			b.Choose(i)
			inside(t, b.Column, 0, stepWidth, fmt.Sprintf("at scale %g", scale))
		}
	}
}

func inside(t *testing.T, object fyne.CanvasObject, left, width float32, where string) {
	t.Helper()
	if !object.Visible() {
		return
	}
	left += object.Position().X
	if right := left + object.Size().Width; object.Size().Width > 0 && (left < -0.5 || right > width+0.5) {
		t.Errorf("%s: %T goes from %g to %g of %g", where, object, left, right, width)
	}
	if text, is := object.(*canvas.Text); is && left+text.MinSize().Width > width+0.5 {
		t.Errorf("%s: %q ends at %g of %g", where, text.Text, left+text.MinSize().Width, width)
	}
	if _, scrolls := object.(interface{ UndoTyping() bool }); scrolls {
		return
	}
	if holder, is := object.(fyne.Widget); is {
		for _, inner := range test.WidgetRenderer(holder).Objects() {
			inside(t, inner, left, width, where)
		}
	}
}

func TestKindsOfFiles(t *testing.T) {
	for path, want := range map[string][2]bool{
		"/a/b.PNG": {true, false}, "b.jpeg": {true, false}, "b.tiff": {true, false}, "b.WebP": {true, false}, "b.svg": {true, false},
		"b.pdf": {true, false}, "b.icc": {false, true}, "b.ICM": {false, true}, "b.docx": {false, false}, "png": {false, false},
	} {
		if IsArtwork(path) != want[0] || IsProfile(path) != want[1] {
			t.Errorf("%s: artwork %v, profile %v", path, IsArtwork(path), IsProfile(path))
		}
	}
	filter := storage.NewExtensionFileFilter(endings())
	for _, name := range []string{"/a/b.TIF", "/a/b.Pdf"} {
		if !filter.Matches(storage.NewFileURI(name)) {
			t.Errorf("the dialog hides %s", name)
		}
	}
}

func TestTurned(t *testing.T) {
	for _, test := range [][3]float64{{0, 90, 90}, {90, 90, 180}, {180, 90, -90}, {-90, -90, 180}, {350, 90, 80}, {-360, -90, -90}} {
		if got := turned(test[0], test[1]); got != test[2] {
			t.Errorf("%g° and %g° are %g°, want %g°", test[0], test[1], got, test[2])
		}
	}
}
