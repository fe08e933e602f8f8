// Package folding makes pictures of the moments of a lesson for files: the paper as it
// is folded, the creases that move lit, and what is glued striped.
package folding
