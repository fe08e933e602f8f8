package main

// runBenchmarks runs all benchmarks and no test.
func runBenchmarks(m *machine, args []string) error {
	if err := noMore(args); err != nil {
		return err
	}
	return m.run(goTool("test", "-run", "^$", "-bench", ".", "-benchmem", "./..."))
}
