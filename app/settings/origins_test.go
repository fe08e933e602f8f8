package settings_test

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/settings"
)

func TestOriginsAreRemembered(t *testing.T) {
	store := test.NewTempApp(t).Preferences()
	set := settings.New(store)
	if _, known := set.Origin("a1"); known {
		t.Error("an origin is known at first")
	}
	set.AddOrigin(settings.Origin{Sum: "a1", Path: "/art/leaf.svg"}, settings.Origin{Sum: "b2", Path: `C:\art\"tea".png`})
	again := settings.New(store)
	for sum, path := range map[string]string{"a1": "/art/leaf.svg", "b2": `C:\art\"tea".png`} {
		if got, known := again.Origin(sum); !known || got.Path != path || got.Missed {
			t.Errorf("%s comes from %+v, %t", sum, got, known)
		}
	}
	again.AddOrigin(settings.Origin{Sum: "a1", Path: "/other/leaf.svg", Missed: true})
	if got, _ := set.Origin("a1"); got.Path != "/other/leaf.svg" || !got.Missed {
		t.Errorf("comes from %+v", got)
	}
}

// A drawing that is saved again and again does not push the others out, and many files do
// not fill the preferences.
func TestOldOriginsAreForgotten(t *testing.T) {
	store := test.NewTempApp(t).Preferences()
	set := settings.New(store)
	set.AddOrigin(settings.Origin{Sum: "first", Path: "/art/first.svg"})
	for i := range 500 {
		set.AddOrigin(settings.Origin{Sum: fmt.Sprint("drawing", i), Path: "/art/drawing.svg"})
	}
	for sum, want := range map[string]bool{"first": true, "drawing499": true, "drawing494": true, "drawing493": false} {
		if _, known := set.Origin(sum); known != want {
			t.Errorf("%s is known: %t", sum, known)
		}
	}
	for i := range 500 {
		set.AddOrigin(settings.Origin{Sum: fmt.Sprint("sum", i), Path: fmt.Sprint("/art/", i)})
	}
	for sum, want := range map[string]bool{"first": false, "sum499": true, "sum100": true, "sum99": false} {
		if _, known := set.Origin(sum); known != want {
			t.Errorf("%s is known: %t", sum, known)
		}
	}
}

func TestWhatIsNoListOfOrigins(t *testing.T) {
	for _, text := range []string{"{", `{"sum":"a1"}`, `[1]`, "null"} {
		store := test.NewTempApp(t).Preferences()
		store.SetString("artwork-origins", text)
		set := settings.New(store)
		if _, known := set.Origin("a1"); known {
			t.Errorf("%s tells an origin", text)
		}
		set.AddOrigin(settings.Origin{Sum: "a1", Path: "/art/leaf.svg"})
		if _, known := set.Origin("a1"); !known {
			t.Errorf("%s keeps origins from being remembered", text)
		}
	}
	store := test.NewTempApp(t).Preferences()
	store.SetFloat("artwork-origins", 3)
	set := settings.New(store)
	set.AddOrigin(settings.Origin{Sum: "a1", Path: "/art/leaf.svg"})
	if _, known := set.Origin("a1"); !known {
		t.Error("a number keeps origins from being remembered")
	}
}
