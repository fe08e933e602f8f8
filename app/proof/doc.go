// Package proof makes what a client sees of a bag before it is produced: a PDF file to
// sign, pictures of the folded bag, and a page that a browser shows. All of it speaks
// to people who know nothing of blanks: no lines of production, no codes, sizes in
// words.
//
// Texts are English words and phrases of package phrase, put through Order.Say before
// anybody reads them.
package proof
