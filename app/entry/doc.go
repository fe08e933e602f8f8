// Package entry holds the entries of the window: numbers, choices, switches, names and
// lines that may stay empty, each with its limits and complaints beside it. An entry
// changes the document; its owner Puts in what the document holds after every change.
//
// Everything here belongs to the goroutine of the window.
package entry
