package project

import bounds "gussetwright/render/limits"

// limits bound what one file may ask of the reader. They hold for saving too, so
// that whatever is saved can be opened again.
type limits struct {
	document  int64 // bytes of bag.json
	entries   int   // entries of the container
	directory int64 // bytes of the table of contents of the container
	file      int64 // unpacked bytes of one artwork file or of the preview
	total     int64 // unpacked bytes of the whole container
	ratio     int64 // unpacked bytes for each packed byte of one entry
	free      int64 // unpacked bytes of one entry to which ratio does not apply
}

const mebibyte = 1 << 20 // bytes

// standard returns the limits that every reader and writer uses; tests pass
// smaller ones.
func standard() limits {
	return limits{
		document:  bounds.ProjectDocumentBytes,
		entries:   bounds.ProjectEntries,
		directory: bounds.ProjectDirectoryBytes,
		file:      bounds.ProjectArtworkBytes,
		total:     bounds.ProjectBytes,
		ratio:     bounds.ProjectPackingRatio,
		free:      bounds.ProjectRatioFreeBytes,
	}
}

// container returns the most bytes that a whole file can need.
func (l limits) container() int64 { return l.total + l.directory + mebibyte }

const (
	deepestNesting   = bounds.ProjectNesting
	mostComplaints   = bounds.ProjectComplaints
	longestEntryName = bounds.ProjectNameBytes
	longestShown     = 60 // characters of a value or a key in a message
)
