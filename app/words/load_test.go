package words

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"

	"fyne.io/fyne/v2/lang"
)

// chosenEnv holds the language for the test binary that is run again: the language
// of a process can be loaded only once.
const chosenEnv = "GUSSETWRIGHT_TEST_LANGUAGE"

// TestSpeak is what the test below runs in a process of its own.
func TestSpeak(t *testing.T) {
	chosen, asked := os.LookupEnv(chosenEnv)
	if !asked {
		t.Skip("run by TestLanguageOfTheUserWins")
	}
	if err := Load(chosen); err != nil {
		t.Fatal(err)
	}
	fmt.Printf("said: %s, %s, %s\n", lang.L("Gusset depth"), lang.L("one"), lang.L("Cancel"))
}

func TestLanguageOfTheUserWins(t *testing.T) {
	const inEnglish, inGerman = "said: Gusset depth, one, Cancel", "said: Seitenfaltentiefe, eine, Abbrechen"
	tests := []struct{ system, chosen, want string }{
		{"en_US.UTF-8", "", inEnglish},
		{"en_US.UTF-8", "de", inGerman},
		{"de_DE.UTF-8", "", inGerman},
		{"de_AT.UTF-8", "", inGerman},
		{"de_DE.UTF-8", "en", inEnglish},
		{"fr_FR.UTF-8", "", inEnglish},
		{"fr_FR.UTF-8", "de", inGerman},
		{"zh_CN.UTF-8", "de", inGerman},
		{"C", "", inEnglish},
		{"C", "de", inGerman},
		{"C.UTF-8", "", inEnglish},
		{"C.UTF-8", "de", inGerman},
		{"", "de", inGerman},
		{"en_US.UTF-8", "xx", inEnglish},
	}
	for _, test := range tests {
		again := exec.Command(os.Args[0], "-test.run=^TestSpeak$", "-test.v")
		again.Env = append(os.Environ(), "LANG="+test.system, "LC_ALL="+test.system, "LC_MESSAGES="+test.system, "LANGUAGE=", chosenEnv+"="+test.chosen)
		output, err := again.CombinedOutput()
		if err != nil {
			t.Errorf("%s, %q: %v\n%s", test.system, test.chosen, err, output)
			continue
		}
		if !strings.Contains(string(output), test.want+"\n") {
			t.Errorf("system %q, chosen %q: want %q in\n%s", test.system, test.chosen, test.want, output)
		}
	}
}
