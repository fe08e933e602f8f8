// Package jobsheet makes what goes into the file of a job: a page with all numbers of
// the run and two small drawings, and the same numbers as a table for other programs.
//
// The page is one page whatever the bag: letters become smaller down to 8 points, then
// lists are shortened and say how many entries they leave out.
//
// Texts are English words and phrases of package phrase, put through Order.Say before
// anybody reads them.
package jobsheet
