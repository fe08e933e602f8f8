// Package gang lays several bags together on one press sheet, so that given
// quantities of all of them take the least sheets.
//
// A form is one laid sheet and how often it is printed; a printer makes one set of
// plates, and one die, for each. The fewest sheets for any number of forms is the
// cutting stock problem, solved by column generation (Gilmore & Gomory, "A linear
// programming approach to the cutting-stock problem", Operations Research 9, 1961):
// a linear program weighs the forms known so far, its prices tell which other form
// would help. Which counts of pieces fit on a sheet at all is answered by limits that
// every layout keeps, and where those allow it by a search for a layout.
//
// Work is counted, not timed: a result is the same on every machine. Products are
// rounded before they are added, so that no machine fuses the two.
//
// A sheet is seen from its print side, as in package sheet, and lengths are in mm.
package gang
