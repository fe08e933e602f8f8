package notice_test

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/notice"
)

func TestAnswersAreGivenOnce(t *testing.T) {
	test.NewTempApp(t)
	bar := notice.New()
	window := test.NewTempWindow(t, bar)
	window.Resize(fyne.NewSize(800, 80))
	given := ""
	bar.Say(notice.Ask, "Save first?",
		notice.Answer{Label: "Save", Main: true, Do: func() { given += "save " }},
		notice.Answer{Label: "Stay", Do: func() { given += "stay " }})
	if bar.Text() != "Save first?" || len(bar.Answers()) != 2 {
		t.Fatalf("the bar says %q with %d answers", bar.Text(), len(bar.Answers()))
	}
	test.Tap(bar.Answers()[0])
	if given != "save " || bar.Visible() {
		t.Errorf("gave %q, visible %v", given, bar.Visible())
	}
	if bar.Escape() {
		t.Error("escape answered a notice that was gone")
	}
}

func TestEscapeGivesTheLastAnswer(t *testing.T) {
	test.NewTempApp(t)
	bar := notice.New()
	test.NewTempWindow(t, bar)
	given := ""
	bar.Say(notice.Ask, "Save first?",
		notice.Answer{Label: "Save", Do: func() { given = "save" }},
		notice.Answer{Label: "Stay", Do: func() { given = "stay" }})
	if !bar.Escape() || given != "stay" || bar.Text() != "" {
		t.Errorf("escape gave %q, the bar says %q", given, bar.Text())
	}
	bar.Say(notice.Alarm, "Something failed")
	if !bar.Escape() || bar.Visible() {
		t.Error("escape did not close a notice without answers")
	}
}

func TestAnswerMayAskAgain(t *testing.T) {
	test.NewTempApp(t)
	bar := notice.New()
	test.NewTempWindow(t, bar)
	bar.Say(notice.Ask, "First", notice.Answer{Label: "Next", Do: func() { bar.Say(notice.Tell, "Second") }})
	test.Tap(bar.Answers()[0])
	if bar.Text() != "Second" {
		t.Errorf("the bar says %q, want the second notice", bar.Text())
	}
}

// What nobody waits for does not take the place of a question.
func TestSayAfter(t *testing.T) {
	test.NewTempApp(t)
	bar := notice.New()
	test.NewTempWindow(t, bar)
	bar.SayAfter(notice.Tell, "Changed")
	bar.SayAfter(notice.Tell, "Changed again")
	if bar.Text() != "Changed again" {
		t.Errorf("the bar says %q", bar.Text())
	}
	bar.Say(notice.Ask, "Save first?", notice.Answer{Label: "Save"})
	bar.SayAfter(notice.Tell, "First")
	bar.SayAfter(notice.Alarm, "Second")
	for _, want := range []string{"Save first?", "First", "Second", ""} {
		if bar.Text() != want {
			t.Errorf("the bar says %q, want %q", bar.Text(), want)
		}
		bar.Escape()
	}
}

// What stands below the bar is told when it takes room and when it gives it back.
func TestBarTellsOfItsRoom(t *testing.T) {
	test.NewTempApp(t)
	bar := notice.New()
	var seen []bool
	bar.OnMove(func() { seen = append(seen, bar.Visible()) })
	bar.Say(notice.Ask, "Keep it?", notice.Answer{Label: "Yes"}, notice.Answer{Label: "No"})
	test.Tap(bar.Answers()[0])
	bar.Say(notice.Tell, "Kept.")
	bar.Escape()
	if want := []bool{true, false, true, false}; !slices.Equal(seen, want) {
		t.Errorf("told with the bar shown %v, want %v", seen, want)
	}
}
