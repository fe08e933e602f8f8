// Package limits holds what a file from outside may ask of the program: artwork, colour
// profiles and project files come from anywhere, and none may take all memory or time. A
// file beyond a limit is refused with a message that says what to do; the readers that
// apply a limit are named at the head of each group.
//
// The table of all of them, testdata/golden/limits/table.md, is made from the comments
// here: the first sentence of each is the reason.
package limits

const mebibyte = 1 << 20 // bytes
