// Package placement puts artwork on the blank: where each file lies, how it is
// scaled and turned, and what of it is shown. It knows the sizes of files but not
// what is in them.
package placement
