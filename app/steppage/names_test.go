package steppage

import (
	"slices"
	"testing"
)

func TestFreeName(t *testing.T) {
	for _, c := range []struct {
		taken []string
		want  string
	}{
		{nil, "Small"}, {[]string{"Large"}, "Small"}, {[]string{"Small"}, "Small (2)"}, {[]string{"Small", "Small (2)"}, "Small (3)"},
	} {
		if got := FreeName("Small", func(name string) bool { return slices.Contains(c.taken, name) }); got != c.want {
			t.Errorf("beside %q: %q, want %q", c.taken, got, c.want)
		}
	}
}

func TestShortName(t *testing.T) {
	for name, want := range map[string]string{
		"": "", "Gift": "Gift", "abcdefghijklmnopqrstuvwxyz": "abcdefghijklmnopqrstuvwxyz", "äbcdefghijklmnopqrstuvwxyzä": "äbcdefghijklmnopqrstuvwxy…",
	} {
		if got := ShortName(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}
