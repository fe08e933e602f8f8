package fold_test

import (
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/sheet"
)

// Whoever glues is told what hot glue does, and that there is glue.
func TestGluedStagesCaution(t *testing.T) {
	eachBag(t, 60, func(t *testing.T, laid *blank.Blank) {
		for _, stage := range fold.Fold(laid).Stages {
			if len(stage.Glue) == 0 {
				continue
			}
			if !strings.Contains(stage.Caution.String(), "Hot glue burns") {
				t.Errorf("%s: the caution says %q, nothing of hot glue", stage.Name, stage.Caution)
			}
			if !strings.Contains(strings.ToLower(stage.Caption.String()), "put glue on") && stage.Name != "base-pinch" {
				t.Errorf("%s: the caption says %q, not where glue goes", stage.Name, stage.Caption)
			}
		}
	})
}

// The lesson warns of a long loop for the same bags, and with the same length, as the
// findings do.
func TestLessonAndFindingsWarnOfLongLoops(t *testing.T) {
	warned := 0
	eachBag(t, 200, func(t *testing.T, laid *blank.Blank) {
		plan := sheet.Lay(laid.Spec.Sheet, laid.SheetPiece())
		findings := check.Inspect(laid, &plan)
		loop := slices.IndexFunc(findings, func(f check.Finding) bool { return f.Code == "cord-loop" })
		told := ""
		for _, stage := range fold.Fold(laid).Stages {
			if caution := stage.Caution.String(); strings.Contains(caution, "small children") {
				told += stage.Name + ": " + caution
			}
		}
		if (told != "") != (loop >= 0) {
			t.Fatalf("the lesson says %q, the findings have a long loop: %v", told, loop >= 0)
		}
		if loop < 0 {
			return
		}
		warned++
		length := geometry.Length(laid.Spec.Handle.Loop()).String()
		if !strings.HasPrefix(told, "handle: ") || !strings.Contains(told, length) || !strings.Contains(findings[loop].Message.String(), length) {
			t.Errorf("a loop of %s: the lesson says %q, the finding %q", length, told, findings[loop].Message)
		}
	})
	if warned < 20 {
		t.Errorf("only %d bags have a long loop", warned)
	}
}

// Creases are pressed in on the side on which their lines are seen, before that side goes
// down.
func TestCreasesArePressedBeforeTurning(t *testing.T) {
	caption := fold.Fold(lay(t, styles()["block"])).Stages[0].Caption.String()
	up, pressed, down := strings.Index(caption, "print side up"), strings.Index(caption, "press in every crease"), strings.Index(caption, "print side down")
	if up < 0 || pressed < up || down < pressed {
		t.Errorf("print side up, creased, print side down are told at %d, %d, %d: %q", up, pressed, down, caption)
	}
}

// A card leaves every opening of its face free, and covers the paper beside it.
func TestCardsAreOpenWhereTheFaceIs(t *testing.T) {
	for _, kind := range []bag.HandleKind{bag.HandleRope, bag.HandleRibbon, bag.HandleTape, bag.HandleHandHole} {
		spec := styles()["hand hole"]
		spec.Handle.Kind, spec.Cards.Top = kind, true
		laid := lay(t, spec)
		lesson := fold.Fold(laid)
		stage := stageOf(t, lesson, "top-cards")
		body := lesson.Pose(stage, 1)
		if len(body.Cards) != 2 {
			t.Fatalf("%s: %d cards lie on the faces, want 2", kind, len(body.Cards))
		}
		for i, face := range []string{"front", "back"} {
			paper, card := facetsOf(&body, face)[0], &body.Cards[i]
			want := map[bool]int{true: 1, false: 2}[kind == bag.HandleHandHole]
			if len(card.Openings) != want || len(paper.Openings) != want {
				t.Fatalf("%s: %d openings in the card, %d in the %s, want %d of each", kind, len(card.Openings), len(paper.Openings), face, want)
			}
			for _, o := range paper.Openings {
				middle := o.From.Mid(o.To)
				if card.Contains(middle) || !card.Contains(middle.Add(geometry.Vec2{X: o.Radius + 0.5*o.To.Sub(o.From).Length() + 1})) {
					t.Errorf("%s: the card of the %s is not open just where the face is, at %v", kind, face, middle)
				}
			}
		}
		said := lesson.Stages[stage]
		if text := said.Caption.String() + said.Check.String(); !strings.Contains(text, "in the cards first") || !strings.Contains(text, "look through") {
			t.Errorf("%s: nobody says when the cards are punched: %q", kind, text)
		}
	}
}
