package pulse

import (
	"bufio"
	"fmt"
	"io"
	"runtime/metrics"
	"time"
)

// Beat is how the program fared in one second.
type Beat struct {
	Time       time.Time // when the second ended; kept to the millisecond
	Goroutines int
	Heap       int64         // bytes of objects on the heap, dead ones among them
	Live       int64         // bytes that the last collection of garbage left
	Objects    int64         // objects on the heap, dead ones among them
	Frames     int           // how many frames ended
	Late       int           // how many of them took longer than Late
	Longest    time.Duration // the longest frame, or the age of the one that still goes on
}

// heading names the columns of the file.
const heading = "# milliseconds since 1970, goroutines, heap bytes, live heap bytes, heap objects, frames, late frames, longest frame in microseconds"

const form = "%d %d %d %d %d %d %d %d"

// String writes the line of the second.
func (b Beat) String() string {
	return fmt.Sprintf(form, b.Time.UnixMilli(), b.Goroutines, b.Heap, b.Live, b.Objects, b.Frames, b.Late, b.Longest.Microseconds())
}

// parse reads a line that String wrote.
func parse(line string) (Beat, error) {
	var b Beat
	var when, longest int64
	_, err := fmt.Sscanf(line, form, &when, &b.Goroutines, &b.Heap, &b.Live, &b.Objects, &b.Frames, &b.Late, &longest)
	if err != nil {
		return Beat{}, fmt.Errorf("line %q is not one of a pulse: %w", line, err)
	}
	b.Time = time.UnixMilli(when)
	b.Longest = time.Duration(longest) * time.Microsecond
	return b, nil
}

// Read reads the seconds of a pulse that was written down. The program may be killed in
// the middle of a line, so a last one without an end is left out.
func Read(r io.Reader) ([]Beat, error) {
	var beats []Beat
	lines := bufio.NewReader(r)
	for {
		line, err := lines.ReadString('\n')
		if err == io.EOF {
			return beats, nil
		}
		if err != nil {
			return nil, fmt.Errorf("read a pulse: %w", err)
		}
		if line[0] == '#' {
			continue
		}
		b, err := parse(line)
		if err != nil {
			return nil, fmt.Errorf("read a pulse: %w", err)
		}
		beats = append(beats, b)
	}
}

// measure asks the runtime for everything but the frames of the window. It does not stop
// the program, as reading runtime.MemStats would.
func measure() Beat {
	samples := []metrics.Sample{
		{Name: "/sched/goroutines:goroutines"},
		{Name: "/memory/classes/heap/objects:bytes"},
		{Name: "/gc/heap/live:bytes"},
		{Name: "/gc/heap/objects:objects"},
	}
	metrics.Read(samples)
	number := func(i int) int64 { return int64(samples[i].Value.Uint64()) }
	return Beat{Goroutines: int(number(0)), Heap: number(1), Live: number(2), Objects: number(3)}
}
