package entry_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
)

// Every option of every choice has a word of the trade and a line that explains it.
func TestEveryOptionHasWords(t *testing.T) {
	test.NewTempApp(t)
	choices := 0
	for _, field := range bag.Fields() {
		if field.Kind() != bag.Choice {
			continue
		}
		choices++
		words := map[string]bool{}
		for _, option := range entry.OptionsOf(&field) {
			if option.Word == option.Value || option.Line == "" {
				t.Errorf("%s: %q has no word or no line", field.Path, option.Value)
			}
			if words[option.Word] {
				t.Errorf("%s: two options are called %q", field.Path, option.Word)
			}
			words[option.Word] = true
		}
	}
	if choices < 7 {
		t.Errorf("only %d choices", choices)
	}
}

func TestChoice(t *testing.T) {
	test.NewTempApp(t)
	var chosen []string
	options := []entry.Option{{Value: "a", Word: "First", Line: "The first one."}, {Value: "b", Word: "Second", Line: "The second one."}}
	choice := entry.NewChoice("Order", "Which of them.", options, func(value string) { chosen = append(chosen, value) })
	window := test.NewTempWindow(t, choice)
	window.Resize(fyne.NewSize(240, 120))
	choice.Put("a")
	if len(chosen) != 0 {
		t.Error("showing a value chooses it")
	}
	choice.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if strings.Join(chosen, "") != "b" || !strings.Contains(test.RenderToMarkup(window.Canvas()), "The second one.") {
		t.Errorf("chosen %v", chosen)
	}
	choice.Pick("b")
	choice.Pick("a")
	if strings.Join(chosen, "") != "ba" {
		t.Errorf("chosen %v, want b, then a", chosen)
	}
	choice.Complain("Not possible.")
	if choice.Message() != "Not possible." {
		t.Errorf("message %q", choice.Message())
	}
	geomtest.Golden(t, "entry/choice.xml", []byte(test.RenderToMarkup(window.Canvas())))
}

func TestSwitch(t *testing.T) {
	test.NewTempApp(t)
	turned := 0
	turn := entry.NewSwitch("Eyelets", "Rings in the holes.", func(bool) { turned++ })
	window := test.NewTempWindow(t, turn)
	window.Resize(fyne.NewSize(240, 80))
	turn.Put(true)
	if turned != 0 {
		t.Error("showing a value turns the switch")
	}
	turn.Focusable().TypedRune(' ')
	if turned != 1 {
		t.Errorf("turned %d times, want once", turned)
	}
	geomtest.Golden(t, "entry/switch.xml", []byte(test.RenderToMarkup(window.Canvas())))
}

// A label that is too long for its line goes on below it, and can be tapped there.
func TestLongSwitchWraps(t *testing.T) {
	app := test.NewTempApp(t)
	appearance.Wear(app, settings.New(app.Preferences()))
	turned := 0
	turn := entry.NewSwitch("Room for the bleed of all neighbours", "Margins grow.", func(bool) { turned++ })
	window := test.NewTempWindow(t, turn)
	window.SetPadded(false)
	const narrow, wide = 160, 600
	if least := turn.MinSize().Width; least > narrow {
		t.Fatalf("it needs a width of %g", least)
	}
	box := turn.Focusable().(entry.Tall)
	more := box.HeightFor(narrow) - box.HeightFor(wide)
	if more <= 0 {
		t.Fatal("it takes no second line")
	}
	window.Resize(fyne.NewSize(narrow, turn.HeightFor(narrow)))
	test.TapCanvas(window.Canvas(), fyne.NewPos(60, box.HeightFor(narrow)-10))
	if turned != 1 {
		t.Errorf("a tap on its last line turns it %d times", turned)
	}
	geomtest.Golden(t, "entry/switch-long.xml", []byte(test.RenderToMarkup(window.Canvas())))
	window.Resize(fyne.NewSize(wide, turn.HeightFor(wide)))
	if height := box.Size().Height; height != box.HeightFor(wide) {
		t.Errorf("in a wide window it stays %g high", height)
	}
	test.TapCanvas(window.Canvas(), fyne.NewPos(wide-20, 10))
	if turned != 1 {
		t.Error("a tap beside it turns it")
	}
}

func TestName(t *testing.T) {
	test.NewTempApp(t)
	taken := ""
	name := entry.NewName("Name", "What it is called.", 10, func(text string) { taken = text })
	window := test.NewTempWindow(t, name)
	window.Resize(fyne.NewSize(240, 120))
	name.Put("Tea")
	test.Type(name.Focusable(), "Coffee")
	name.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if taken != "Coffee" {
		t.Errorf("taken %q", taken)
	}
	test.Type(name.Focusable(), "Coffee and cake")
	name.Focusable().FocusLost()
	if taken != "Coffee" || name.Text() != "Coffee and cake" || !strings.Contains(name.Message(), "5 characters too long") {
		t.Errorf("taken %q, text %q, message %q", taken, name.Text(), name.Message())
	}
	name.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if name.Text() != "Coffee" || name.Message() != "" {
		t.Errorf("escape leaves %q, %q", name.Text(), name.Message())
	}
}

// Text breaks at spaces and keeps every letter.
func TestTextBreaks(t *testing.T) {
	test.NewTempApp(t)
	words := "The base flap is longer than half the face and Seitenfaltenkantenverstärkungsstreifenbreitenüberschreitung too"
	text := entry.NewText(words, entry.Plain)
	one := text.HeightFor(10_000)
	for _, width := range []float32{400, 200, 90, 30, 1} {
		if text.HeightFor(width) <= one {
			t.Errorf("the text does not break at %g", width)
		}
	}
	window := test.NewTempWindow(t, text)
	window.Resize(fyne.NewSize(120, 300))
	var shown strings.Builder
	for _, line := range strings.Split(test.RenderToMarkup(window.Canvas()), "\n") {
		if start := strings.Index(line, "<text"); start >= 0 {
			line = line[start:]
			shown.WriteString(line[strings.Index(line, ">")+1 : strings.LastIndex(line, "</text>")])
		}
	}
	squeeze := strings.NewReplacer(" ", "", "\n", "")
	if squeeze.Replace(shown.String()) != squeeze.Replace(words) {
		t.Errorf("shown %q", shown.String())
	}
}

// A message takes room only while it says something, and tells when that changes.
func TestMessage(t *testing.T) {
	test.NewTempApp(t)
	message := entry.NewMessage()
	grown, shown := 0, 0
	message.OnGrow(func() { grown++ })
	if message.HeightFor(200) != 0 {
		t.Error("a message that says nothing takes room")
	}
	message.Say(check.Warning, "Too short.", func() { shown++ })
	if message.HeightFor(200) == 0 || grown == 0 {
		t.Errorf("height %g, told %d times", message.HeightFor(200), grown)
	}
	test.Tap(message)
	if shown != 1 {
		t.Error("a click shows no place")
	}
	before := grown
	message.Say(check.Warning, "Too short.", nil)
	if grown != before {
		t.Error("the same message told of a change")
	}
	message.Say(check.Note, "", nil)
	test.Tap(message)
	if message.HeightFor(200) != 0 || shown != 1 {
		t.Error("a message that was taken back is still there")
	}
}

// Signs of different severity differ in shape, not in colour only.
func TestSignsDiffer(t *testing.T) {
	test.NewTempApp(t)
	names := map[string]bool{}
	for _, severity := range []check.Severity{check.Error, check.Warning, check.Note} {
		content := string(entry.Sign(severity).Content())
		start := strings.Index(content, " d=\"")
		names[content[start:]] = true
	}
	if len(names) != 3 {
		t.Errorf("%d different signs, want 3", len(names))
	}
}

// Other options can be offered; what is chosen stays so where it is among them.
func TestChoiceWithOtherOptions(t *testing.T) {
	test.NewTempApp(t)
	options := []entry.Option{{Value: "a", Word: "First"}, {Value: "b", Word: "Second"}, {Value: "c", Word: "Third"}}
	chosen := ""
	choice := entry.NewChoice("Order", "", options[:2], func(value string) { chosen = value })
	window := test.NewTempWindow(t, choice)
	window.Resize(fyne.NewSize(240, 120))
	choice.Put("b")
	choice.SetOptions(options)
	if chosen != "" || !strings.Contains(test.RenderToMarkup(window.Canvas()), "Second") {
		t.Errorf("offering others chooses %q", chosen)
	}
	choice.Pick("c")
	if chosen != "c" {
		t.Errorf("chosen %q", chosen)
	}
}
