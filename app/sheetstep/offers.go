package sheetstep

import (
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
)

// offers is a column of offers, of which as many are shown as are needed.
type offers struct {
	*entry.Column
	act   string
	press func(int)
	list  []*steppage.Offer
}

// newOffers returns a column of offers that all say the same of a press, which is told
// the place of its offer in the column.
func newOffers(act string, press func(int)) *offers {
	return &offers{Column: entry.NewColumn(1), act: act, press: press}
}

// set shows what would be gained by each press.
func (o *offers) set(gains []string) {
	for i := len(o.list); i < len(gains); i++ {
		added := steppage.NewOffer(o.act, func() { o.press(i) })
		added.Hide()
		o.list = append(o.list, added)
		o.Add(added)
	}
	for i, one := range o.list {
		if i >= len(gains) {
			one.Hide()
			continue
		}
		one.SetGain(gains[i])
		one.Show()
	}
}
