// Package window is the main window of Gussetwright.
package window
