package main

import (
	"maps"
	"strconv"
	"strings"
)

// results are what benchmarks measured: for each, by its name without the word
// Benchmark, the value of each of its metrics.
type results map[string]map[string]float64

// readResults reads what go test -bench prints, as it is laid down in "Go Benchmark Data
// Format" of the Go project (golang.org/design/14313-benchmark-format): the name, how
// often it ran, and pairs of a value and its unit. With one processor names have no
// number of processors behind them. Other lines are passed over.
func readResults(output string) results {
	read := results{}
	for line := range strings.Lines(output) {
		words := strings.Fields(line)
		if len(words) < 4 || len(words)%2 != 0 || !strings.HasPrefix(words[0], "Benchmark") {
			continue
		}
		if _, err := strconv.Atoi(words[1]); err != nil {
			continue
		}
		if metrics := readMetrics(words[2:]); metrics != nil {
			read[strings.TrimPrefix(words[0], "Benchmark")] = metrics
		}
	}
	return read
}

// readMetrics reads pairs of value and unit; nil where a value is no number.
func readMetrics(words []string) map[string]float64 {
	metrics := map[string]float64{}
	for i := 0; i+1 < len(words); i += 2 {
		value, err := strconv.ParseFloat(words[i], 64)
		if err != nil {
			return nil
		}
		metrics[words[i+1]] = value
	}
	return metrics
}

// add takes in what the benchmarks of a folder measured.
func (r results) add(folder string, more results) {
	for name, metrics := range more {
		r[folder+" "+name] = maps.Clone(metrics)
	}
}

// worst returns the figure, the greatest where the origin names many, and whether there
// is any.
func (r results) worst(o origin) (value float64, found bool) {
	parent, many := strings.CutSuffix(o.folder+" "+o.benchmark, "*")
	for name, metrics := range r {
		if name != parent && !(many && strings.HasPrefix(name, parent)) {
			continue
		}
		if got, has := metrics[o.metric]; has && (!found || got > value) {
			value, found = got, true
		}
	}
	return value, found
}
