// Package job reckons what a run of bags takes: sheets, paper, rope, glue, cards,
// cartons and pallets, the weight of a bag, and what it costs at the user's own prices.
// Weights are grams or kilograms as their names say, lengths mm unless named metres.
//
// Counts and amounts of money are float64: everything here is an estimate from measures
// that are no better known than to a hundredth, and a float64 holds fifteen digits. No
// amount is rounded on the way; whoever shows one rounds it to two decimals.
//
// What is spoilt in the press and in the finishing has used paper, board, film and glue:
// these are reckoned for all bags that are printed. Handles, cartons and pallets are
// reckoned for the good bags.
package job
