package scene_test

import (
	"testing"

	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// A voice without translation, and none at all, speak English.
func TestVoices(t *testing.T) {
	french := scene.Spoken(func(english string) string {
		return map[string]string{"front": "face avant", "%s of %d": "%[2]d fois %[1]s"}[english]
	})
	said := phrase.New("%s of %d", phrase.Word("front"), 2)
	tests := []struct {
		name       string
		voice      scene.Voice
		word, tell string
	}{
		{"English", scene.English(), "front", "front of 2"},
		{"none", scene.OrEnglish(nil), "front", "front of 2"},
		{"French", scene.OrEnglish(french), "face avant", "2 fois face avant"},
	}
	for _, test := range tests {
		if got := test.voice.Word("front"); got != test.word {
			t.Errorf("%s: a word is %q, want %q", test.name, got, test.word)
		}
		if got := test.voice.Tell(said); got != test.tell {
			t.Errorf("%s: a phrase is %q, want %q", test.name, got, test.tell)
		}
		if got := test.voice.Number(49.5, 2); got != "49.5" {
			t.Errorf("%s: a number is %q, want 49.5", test.name, got)
		}
	}
}
