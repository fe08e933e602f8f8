// Package pulse writes down, a line a second, how the program fares while it runs:
// goroutines, memory, and how long the goroutine of the window takes to answer. It does
// nothing unless it is asked for.
package pulse

import (
	"fmt"
	"io"
	"os"
	"time"
)

// Variable names the environment variable that names the file to write to.
const Variable = "GUSSETWRIGHT_PULSE"

// Late is how long the window may take to answer; a slower answer can be felt.
const Late = 100 * time.Millisecond

// How often a line is written, and how long the window rests between two questions.
const (
	everySecond = time.Second
	rest        = 10 * time.Millisecond
)

// Start begins to write lines to a file, made anew, until the program ends. post does
// something on the goroutine of the window. Where path is empty nothing is begun. The
// error says that the file cannot be made.
func Start(path string, post func(func())) error {
	if path == "" {
		return nil
	}
	file, err := os.Create(path)
	if err != nil {
		return fmt.Errorf("write the pulse of the program: %w; name a file that can be written in %s", err, Variable)
	}
	go func() {
		_ = keep(file, post, everySecond, nil) // a full disk ends the lines, which whoever reads them sees
		_ = file.Close()
	}()
	return nil
}

// keep writes a line every interval until end is closed or a line cannot be written.
func keep(w io.Writer, post func(func()), interval time.Duration, end <-chan struct{}) error {
	if _, err := fmt.Fprintln(w, heading); err != nil {
		return err
	}
	asking := newHeart()
	stopped := make(chan struct{})
	defer close(stopped)
	go asking.beat(post, stopped)
	ticker := time.NewTicker(interval)
	defer ticker.Stop()
	for {
		select {
		case <-end:
			return nil
		case now := <-ticker.C:
			line := measure()
			line.Time = now
			line.Answers, line.Late, line.Longest = asking.take(now)
			if _, err := fmt.Fprintln(w, line); err != nil {
				return err
			}
		}
	}
}
