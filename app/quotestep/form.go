package quotestep

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/entry"
	"gussetwright/app/sheetpicture"
	"gussetwright/app/steppage"
)

// formView shows a form: how often it is printed, its picture, and which bags the numbers
// stand for.
type formView struct {
	*entry.Column
	title   *entry.Text
	picture *sheetpicture.FormPicture
	legend  *entry.Column
	keys    []*sheetpicture.Key
}

func newFormView() *formView {
	v := &formView{title: entry.NewText("", entry.Plain), picture: sheetpicture.NewFormPicture(), legend: entry.NewColumn(0.5)}
	v.Column = entry.NewColumn(1, v.title, v.picture, v.legend)
	return v
}

// set shows a form, counted from 0.
func (v *formView) set(art sheetpicture.FormArt, number int) {
	title := fmt.Sprintf(lang.L("Form %d: %d sheets"), number+1, art.Form.Run)
	if art.Form.Run == 1 {
		title = fmt.Sprintf(lang.L("Form %d: one sheet"), number+1)
	}
	v.title.SetText(title)
	v.picture.Set(art)
	counts := art.Form.Counts(len(art.Items))
	used := 0
	for item, n := range counts {
		if n == 0 {
			continue
		}
		if used == len(v.keys) {
			key := sheetpicture.NewKey()
			v.keys = append(v.keys, key)
			v.legend.Add(key)
		}
		v.keys[used].Set(item, fmt.Sprintf(lang.L("%s, %d on a sheet"), art.Items[item].Name, n))
		used++
	}
	for i, key := range v.keys {
		steppage.Show(key, i < used)
	}
}
