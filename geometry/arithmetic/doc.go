// Package arithmetic reads what is typed into an entry: a value with or without a
// unit, or a sum such as "2*120 + 10", "24 cm + 3" or "(240 + 100) * 2". Lengths, weights,
// grammages and counts are read, and lists of counts.
package arithmetic
