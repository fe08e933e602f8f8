// Package profile reads the head of ICC colour profiles, as far as a file for print
// needs to know what it is given, and makes the profile of sRGB from its formulas.
//
// Places and names in a profile are those of ICC.1:2004-10, section 7 (values from
// memory).
package profile
