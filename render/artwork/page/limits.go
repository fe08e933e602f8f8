package page

import (
	"time"

	"gussetwright/render/limits"
)

// Limits that keep a file, however it was made, from taking all memory or time; their
// reasons are in package limits.
const (
	mostBytes   = limits.PageBytes
	mostCopied  = limits.PageCopyBytes
	mostContent = limits.PageContentBytes
	mostObjects = limits.PageObjects
	mostValues  = limits.PageValues
	mostRules   = limits.PageRules
	deepest     = limits.PageNesting
	deepestTree = limits.PageTreeDepth
	mostLooked  = limits.PageMeasured
	mostListed  = limits.PageListed
	mostUnits   = limits.PageUnits
	mostLength  = float64(limits.PageLongest) // mm
	mostPixels  = limits.PageRenderedPixels

	// leastLength is the shortest side of the placed area in mm: anything smaller is a
	// damaged box.
	leastLength = 0.5

	// memoryPages is the memory of one call of PDFium in units of 64 KiB.
	memoryPages = limits.PageMemoryBytes >> 16
	// atOnce is how many calls run at a time; each may take the memory above.
	atOnce = 2

	readTime = limits.PageReadSeconds * time.Second
	drawTime = limits.PageDrawSeconds * time.Second
)
