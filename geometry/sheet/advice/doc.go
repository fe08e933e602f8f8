// Package advice says which sheets a bag can be printed on and, where a sheet just
// misses holding one blank more, which least change to the bag would gain it. Every
// proposal is verified by drawing the changed bag and laying it again, and none is
// made that package check would warn of.
package advice
