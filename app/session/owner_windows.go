package session

import "os"

// isRunning tells whether there is a process of this number.
func isRunning(number int) bool {
	process, err := os.FindProcess(number)
	if err != nil {
		return false
	}
	process.Release()
	return true
}
