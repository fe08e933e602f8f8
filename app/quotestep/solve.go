package quotestep

import (
	"context"
	"fmt"
	"reflect"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/steppage"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/job"
	"gussetwright/geometry/sheet/gang"
)

// gangOrder asks how bags share sheets.
type gangOrder struct {
	ctx       context.Context
	number    int // counts the orders, to tell a late result from the newest
	sheet     bag.Sheet
	items     []gang.Item
	outlines  []geometry.Path // of the pieces, for the pictures
	most      int             // forms
	makeReady float64         // sheets for each form
	alone     aloneSheets
	progress  func(best, bound int)
}

// aloneSheets is what the bags take, each on sheets of its own.
type aloneSheets struct {
	sheets float64 // without make-ready
	ready  float64 // for make-ready
	forms  int
}

// gangResult is what an order came to. With an error it may hold what was found until
// then.
type gangResult struct {
	order  gangOrder
	result gang.Result
	err    error
}

// gangOrderOf returns the order for a family, or says why none can be given.
func gangOrderOf(members []member, most int) (order gangOrder, fault string) {
	order.most = most
	for i := range members {
		s := members[i].snapshot
		name := memberName(i, members[i].spec.Name)
		switch {
		case s == nil:
			return order, fmt.Sprintf(lang.L("%s cannot be drawn; mend its entries first."), name)
		case s.Plan.Up() == 0:
			return order, fmt.Sprintf(lang.L("The blank of %s does not fit the sheet, so the sizes cannot share sheets."), name)
		}
		order.sheet, order.makeReady = s.Spec.Sheet, s.Spec.Run.MakeReady
		order.items = append(order.items, job.GangItem(name, &s.Blank))
		order.outlines = append(order.outlines, s.Blank.Pieces[0].Outline)
		order.alone.sheets += s.Job.Sheets - s.Job.MakeReadySheets
		order.alone.ready += s.Job.MakeReadySheets
		order.alone.forms += s.Job.Forms
	}
	return order, ""
}

// memberName names a bag of the family, the first of which is that of the project.
func memberName(i int, name string) string {
	switch {
	case name != "":
		return name
	case i == 0:
		return lang.L("This bag")
	}
	return fmt.Sprintf(lang.L("Size %d"), i)
}

// same tells whether another order comes to the same.
func (o *gangOrder) same(other *gangOrder) bool {
	return len(other.items) > 0 && o.sheet == other.sheet && o.most == other.most && o.makeReady == other.makeReady &&
		o.alone == other.alone && reflect.DeepEqual(o.items, other.items)
}

// solve solves an order, which takes seconds at worst.
func solve(o gangOrder) gangResult {
	result, err := gang.Solve(o.ctx, o.sheet, o.items, gang.Options{MostForms: o.most, Progress: o.progress})
	return gangResult{o, result, err}
}

// newSolver returns what takes orders, and on the way tells how far they are.
func (g *ganging) newSolver() (order func(gangOrder)) {
	g.OnClose(func() { g.stop() })
	request := steppage.Beside(g.Page, solve, g.deliver)
	return func(o gangOrder) {
		if g.Later != nil {
			o.progress = func(best, bound int) { g.Later(func() { g.tell(o.number, best, bound) }) }
		}
		request(o)
	}
}

// overText says how many bags come out above what is wanted.
func overText(r *gang.Result) string {
	if len(r.Forms) == 0 {
		return ""
	}
	var parts []string
	for i, over := range r.Over {
		if over > 0 {
			parts = append(parts, fmt.Sprintf(lang.L("%s %d"), r.Items[i].Name, over))
		}
	}
	if len(parts) == 0 {
		return lang.L("No bag comes out above what is wanted.")
	}
	return fmt.Sprintf(lang.L("Bags above what is wanted: %s."), strings.Join(parts, ", "))
}
