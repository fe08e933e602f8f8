package artstep

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
)

func fits() []entry.Option {
	return []entry.Option{
		{Value: string(bag.FitCover), Word: lang.L("Cover"), Line: lang.L("Fills the place and its bleed; what is too much is cut off.")},
		{Value: string(bag.FitContain), Word: lang.L("Within"), Line: lang.L("All of it shows inside its place.")},
		{Value: string(bag.FitExact), Word: lang.L("Size of the file"), Line: lang.L("As large as the file says, centred.")},
	}
}

func repeats() []entry.Option {
	return []entry.Option{
		{Value: string(bag.RepeatNone), Word: lang.L("Once")},
		{Value: string(bag.RepeatGrid), Word: lang.L("Side by side"), Line: lang.L("In rows and columns until the place is full.")},
		{Value: string(bag.RepeatHalfDrop), Word: lang.L("Half drop"), Line: lang.L("Every second column half a step lower.")},
	}
}

func contents() []entry.Option {
	return []entry.Option{
		{Value: string(bag.HoldsPicture), Word: lang.L("Picture or text")},
		{Value: string(bag.HoldsEAN13), Word: lang.L("EAN-13 bar code"), Line: lang.L("The code with its quiet zones, and nothing else.")},
	}
}

// placesOn returns the places that a bag has, and the present one whether it has that
// or not.
func placesOn(b *blank.Blank, present string) []entry.Option {
	lines := map[string]string{
		bag.OnBlank:   lang.L("Goes on over all creases."),
		bag.OnFaces:   lang.L("Front and back stay the same."),
		bag.OnGussets: lang.L("Both gussets stay the same."),
	}
	var options []entry.Option
	for _, on := range bag.ArtworkPlaces() {
		if on == present || placement.Has(b, on) {
			options = append(options, entry.Option{Value: on, Word: words.Place(on), Line: lines[on]})
		}
	}
	return options
}

// factsOf says what a file is.
func factsOf(art *artwork.Art, unit geometry.Unit) string {
	size := words.Size(unit, art.Source.Size.X, art.Source.Size.Y)
	text := art.Format + ", " + size
	if !art.Stated {
		text = art.Format + ", " + fmt.Sprintf(lang.L("about %s, as the file does not say"), size)
	}
	if art.Raster != nil {
		text += ", " + fmt.Sprintf(lang.L("%d × %d pixels"), art.Raster.Size.X, art.Raster.Size.Y)
	}
	if art.Pages > 1 {
		text += ", " + fmt.Sprintf(lang.L("%d pages"), art.Pages)
	}
	return text
}
