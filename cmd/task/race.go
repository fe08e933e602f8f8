package main

// runRace runs all tests with the race detector, which needs a C compiler. One package
// at a time, since the detector takes five to ten times the memory.
func runRace(m *machine, args []string) error {
	if err := noMore(args); err != nil {
		return err
	}
	if err := setUpWindow(m); err != nil {
		return err
	}
	return m.run(command{env: withCgo, words: []string{"go", "test", "-race", "-p", "1", "-count=1", "-timeout", "1h", "./..."}})
}
