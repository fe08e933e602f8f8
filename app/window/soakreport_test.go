//go:build linux

package window

import (
	"cmp"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"gussetwright/app/pulse"
)

// What a soak may come to. A shorter one than shortest is not judged by its memory,
// which still rises while everything is met for the first time. Memory goes up and down with
// what is being done; what leaks raises the least that is held.
const (
	mostGrowth     = 1.075 // of the least from the second third to the last
	mostGoroutines = 5     // more than at the beginning
	mostMissed     = 0.2   // share of the times that a deed was done
	shortest       = 10 * time.Minute
)

// figures are what is judged.
type figures struct {
	memory   series // MB
	live     series // MB that collections of garbage left
	beats    []pulse.Beat
	begin    int // goroutines at rest before
	end      int // and after
	duration time.Duration
}

// report prints the figures and judges them.
func (n *notebook) report(t *testing.T, pulseFile string, strict bool) {
	n.end()
	file, err := os.Open(pulseFile)
	if err != nil {
		t.Errorf("the program wrote no pulse: %v", err)
		return
	}
	defer file.Close()
	beats, err := pulse.Read(file)
	if err != nil {
		t.Error(err)
		return
	}
	f := n.figuresOf(beats)
	t.Log("\n" + n.deedTable() + f.memoryTable() + f.goroutineLine() + n.frameTable(f.beats))
	if !n.over {
		t.Error("the soak broke off")
		return
	}
	for _, complaint := range slices.Concat(n.missed(), f.complaints(strict)) {
		t.Error(complaint)
	}
}

// figuresOf puts the figures of the time of the soak together.
func (n *notebook) figuresOf(beats []pulse.Beat) figures {
	f := figures{}
	last := time.Now()
	if ended, found := n.restAt(restEnd); found {
		last = ended
	}
	for _, p := range n.memory {
		if !p.at.After(last) {
			f.memory = append(f.memory, p)
		}
	}
	begun, found := n.restAt(restBegin)
	for _, b := range beats {
		if b.Time.Before(n.began) || b.Time.After(last) {
			continue
		}
		f.beats = append(f.beats, b)
		f.live = append(f.live, point{b.Time, float64(b.Live) / 1e6})
		if found && !b.Time.After(begun) {
			f.begin = b.Goroutines
		}
		f.end = b.Goroutines
	}
	f.duration = last.Sub(n.began)
	return f
}

// complaints returns what a soak fails for.
func (f figures) complaints(strict bool) (complaints []string) {
	say := func(format string, values ...any) { complaints = append(complaints, fmt.Sprintf(format, values...)) }
	if len(f.memory) == 0 || len(f.beats) == 0 {
		return []string{"nothing was measured"}
	}
	second, last := f.memory.between(1.0/3, 2.0/3).least(), f.memory.between(2.0/3, 1).least()
	if f.duration >= shortest && last > mostGrowth*second {
		say("memory never fell below %.0f MB in the last third, where it fell to %.0f MB in the second; %g times that is allowed",
			last, second, mostGrowth)
	}
	if f.end > f.begin+mostGoroutines {
		say("%d goroutines at the end, %d at the beginning; %d more are allowed", f.end, f.begin, mostGoroutines)
	}
	if late := f.late(); strict && late > 0 {
		say("%d frames of the window took longer than %v", late, pulse.Late)
	}
	return complaints
}

func (f figures) late() (late int) {
	for _, b := range f.beats {
		late += b.Late
	}
	return late
}

// memoryTable shows the memory in the course of the soak.
func (f figures) memoryTable() string {
	var b strings.Builder
	if len(f.memory) == 0 {
		return "no memory was measured\n"
	}
	begin := f.memory[0].at
	fmt.Fprintf(&b, "%-10s %8s %8s %10s %8s\n", "memory, MB", "all", "least", "live", "least")
	before := begin
	row := func(name string, at time.Time) {
		fmt.Fprintf(&b, "%-10s %8.0f %8.0f %10.1f %8.1f\n", name, f.memory.near(at), f.memory.within(before, at).least(), f.live.near(at), f.live.within(before, at).least())
		before = at
	}
	row("start", begin)
	for _, after := range slices.Concat([]time.Duration{2 * time.Minute}, everyFiveMinutes(f.duration)) {
		if after < f.duration {
			row(after.String(), begin.Add(after))
		}
	}
	row("end", f.memory[len(f.memory)-1].at)
	fmt.Fprintf(&b, "slope over the last two thirds, MB in 10 minutes: all %+.1f, live %+.1f\n",
		10*f.memory.between(1.0/3, 1).slope(), 10*f.live.between(1.0/3, 1).slope())
	fmt.Fprintf(&b, "slope over the last half, MB a minute: all %+.2f, live %+.2f\n",
		f.memory.between(0.5, 1).slope(), f.live.between(0.5, 1).slope())
	return b.String()
}

func everyFiveMinutes(until time.Duration) (all []time.Duration) {
	for at := 5 * time.Minute; at < until; at += 5 * time.Minute {
		all = append(all, at)
	}
	return all
}

func (f figures) goroutineLine() string {
	most := 0
	for _, b := range f.beats {
		most = max(most, b.Goroutines)
	}
	return fmt.Sprintf("goroutines: %d at rest before, %d at most, %d at rest after\n", f.begin, most, f.end)
}

// frameTable shows how long the frames of the window took, and in which deeds they took
// longest.
func (n *notebook) frameTable(beats []pulse.Beat) string {
	const shown = 6
	var longest []float64
	frames, late, worst := 0, map[string]int{}, map[string]time.Duration{}
	for _, b := range beats {
		frames += b.Frames
		longest = append(longest, float64(b.Longest.Microseconds())/1000)
		doing := n.at(b.Time.Add(-time.Second / 2))
		late[doing] += b.Late
		worst[doing] = max(worst[doing], b.Longest)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "longest frame of a second, ms: p50 %.0f, p95 %.0f, p99 %.0f, longest %.0f (%d frames in %d seconds)\n",
		quantile(longest, 0.5), quantile(longest, 0.95), quantile(longest, 0.99), quantile(longest, 1), frames, len(beats))
	fmt.Fprintf(&b, "frames over %v: %d\n", pulse.Late, figures{beats: beats}.late())
	byLongest := slices.SortedFunc(maps.Keys(worst), func(a, b string) int {
		return cmp.Or(cmp.Compare(late[b], late[a]), cmp.Compare(worst[b], worst[a]), cmp.Compare(a, b))
	})
	for _, doing := range byLongest[:min(shown, len(byLongest))] {
		fmt.Fprintf(&b, "  %-20s %4d, the longest %d ms\n", doing, late[doing], worst[doing].Milliseconds())
	}
	return b.String()
}

// tally is how often a deed was done, and how often it went wrong.
type tally struct{ done, missed int }

func (n *notebook) tallies() map[string]tally {
	all := map[string]tally{}
	for _, s := range n.spans {
		one := all[s.name]
		one.done++
		if s.err != nil {
			one.missed++
		}
		all[s.name] = one
	}
	return all
}

func (n *notebook) deedTable() string {
	var b strings.Builder
	all := n.tallies()
	for _, name := range slices.Sorted(maps.Keys(all)) {
		fmt.Fprintf(&b, "%-20s %4d times, %d missed\n", name, all[name].done, all[name].missed)
	}
	return b.String()
}

// missed complains about deeds that went wrong more often than a busy machine explains.
func (n *notebook) missed() (complaints []string) {
	all := n.tallies()
	for _, name := range slices.Sorted(maps.Keys(all)) {
		if one := all[name]; float64(one.missed) > mostMissed*float64(one.done) {
			complaints = append(complaints, fmt.Sprintf("%s: %d of %d times the program did not do it", name, one.missed, one.done))
		}
	}
	return complaints
}

func TestComplaintsOfASoak(t *testing.T) {
	begin := time.Unix(1000, 0)
	soaked := func(minutes int, rise float64, goroutines, late int) figures {
		f := figures{begin: 30, end: goroutines, duration: time.Duration(minutes) * time.Minute}
		for second := range minutes * 60 {
			at := begin.Add(time.Duration(second) * time.Second)
			f.memory = append(f.memory, point{at, 200 + rise*float64(second)/60})
			f.beats = append(f.beats, pulse.Beat{Time: at, Goroutines: goroutines})
		}
		f.beats[0].Late = late
		return f
	}
	for _, test := range []struct {
		name   string
		f      figures
		strict bool
		want   string // "" for none
	}{
		{"flat", soaked(30, 0, 30, 0), true, ""},
		{"a slow rise", soaked(30, 0.9, 35, 0), true, ""},
		{"a leak", soaked(30, 3, 30, 0), false, "never fell below 260 MB"},
		{"a leak in a short soak", soaked(3, 3, 30, 0), false, ""},
		{"goroutines", soaked(30, 0, 36, 0), false, "36 goroutines at the end"},
		{"late on a busy machine", soaked(30, 0, 30, 2), false, ""},
		{"late on a quiet machine", soaked(30, 0, 30, 2), true, "2 frames"},
		{"nothing measured", figures{}, false, "nothing was measured"},
	} {
		got := strings.Join(test.f.complaints(test.strict), "; ")
		if (got == "") != (test.want == "") || !strings.Contains(got, test.want) {
			t.Errorf("%s: complains %q, want %q", test.name, got, test.want)
		}
	}
}
