// Package faults holds tests alone: what is on the disk after the program was killed,
// the disk was full, or a folder could not be written.
//
// The tests start themselves as a second program and kill that. A test run kills it 60
// times; more with
//
//	go test ./app/faults -run Killed -kills 500 -v
package faults
