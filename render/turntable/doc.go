// Package turntable writes the proof that a client opens in a browser: one HTML page
// with the folded bag, which a finger or the mouse turns, and what there is to know
// about it.
//
// The page holds all that it needs. It asks nothing of a network, and its content
// security policy keeps it from doing so. Where a browser cannot draw in space, a
// still picture stands in, which is also what is printed. The address of the page may
// name a view: "#view=back", or in degrees "#view=30,20,1.5" for azimuth, elevation
// and zoom.
package turntable
