// Package project reads and writes project files: NAME.gusset, a ZIP container
// with bag.json, the artwork as it was given and a preview, or bag.json alone.
//
// Reading is strict. Whatever does not fit is named with its path, its value, the
// limit and a remedy, all complaints of a file at once; nothing is guessed and
// nothing leaves the container. Saving is atomic, and saving twice gives the same
// bytes.
package project
