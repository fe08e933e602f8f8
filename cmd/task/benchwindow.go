package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

// windowFolder stands for what is measured of the started window.
const windowFolder = "cmd/gussetwright"

// How often a window is started, how long it may take to come to rest, and how long it is
// then watched.
const (
	starts     = 3
	timeToRest = 6 * time.Second
	timeIdle   = 5 * time.Second
)

// watchWindows starts the window on the demo bag, and beside it a bare window of the
// toolkit, on a screen that no one sees. It tells when they showed their first frame,
// how much of a processor they use while nothing is done, and the memory they hold then.
func watchWindows(m *machine) (results, error) {
	parts := append(windowBuildParts(), windowTestParts()...)
	if missing := missingOf(parts, m.has); m.system != "linux" || len(missing) > 0 {
		fmt.Fprintln(m.errors, "note: the window is not started; that needs Linux and", windowPartList)
		return nil, nil
	}
	work, err := os.MkdirTemp("", "gussetwright-bench-")
	if err != nil {
		return nil, fmt.Errorf("make room for the window: %w", err)
	}
	defer os.RemoveAll(work)
	project, err := demoProject(m.path("assets", "demo"))
	if err != nil {
		return nil, err
	}
	found := results{}
	for _, w := range []struct {
		name, source string
		args         []string
	}{
		{"Window", "./" + windowFolder, []string{project}},
		{"Bare", "./" + filepath.Join("cmd", "task", "testdata", "bare", "bare.go"), nil},
	} {
		program := filepath.Join(work, w.name)
		build := command{env: withCgo, words: []string{"go", "build", "-o", program, w.source}}
		if output, err := outputHere(m, build); err != nil {
			return found, fmt.Errorf("build the window: %w\n%s", err, output)
		}
		figures, err := watchOften(filepath.Join(work, w.name+"-home"), program, w.args)
		if err != nil {
			return found, err
		}
		found[w.name] = figures
	}
	return found, nil
}

// watchOften starts a program several times and returns the median of each figure.
func watchOften(home, program string, args []string) (map[string]float64, error) {
	all := map[string][]float64{}
	for range starts {
		figures, err := watchOnce(home, program, args)
		if err != nil {
			return nil, fmt.Errorf("watch %s: %w", filepath.Base(program), err)
		}
		for metric, value := range figures {
			all[metric] = append(all[metric], value)
		}
	}
	medians := map[string]float64{}
	for metric, values := range all {
		slices.Sort(values)
		medians[metric] = values[len(values)/2]
	}
	return medians, nil
}

// watchOnce starts a program on a screen of its own, watches it and ends it. It finds its
// home empty the first time.
func watchOnce(home, program string, args []string) (map[string]float64, error) {
	frames, err := os.MkdirTemp("", "gussetwright-screen-")
	if err != nil {
		return nil, fmt.Errorf("make room for the screen: %w", err)
	}
	defer os.RemoveAll(frames)
	display, stop, err := openScreen("-fbdir", frames)
	if err != nil {
		return nil, err
	}
	defer stop()
	if err := os.MkdirAll(home, 0o777); err != nil {
		return nil, fmt.Errorf("make a home for the window: %w", err)
	}
	process := exec.Command(program, args...)
	process.Env = append(os.Environ(), "DISPLAY="+display, "WAYLAND_DISPLAY=", "HOME="+home, "XDG_CONFIG_HOME="+filepath.Join(home, "config"),
		"XDG_CACHE_HOME="+filepath.Join(home, "cache"), "LANG=en_US.UTF-8", "LC_ALL=", "LC_MEASUREMENT=en_GB.UTF-8", "FYNE_SCALE=1")
	start := time.Now()
	if err := process.Start(); err != nil {
		return nil, err
	}
	defer process.Wait()
	defer process.Process.Kill()
	if err := waitForFrame(filepath.Join(frames, "Xvfb_screen0")); err != nil {
		return nil, err
	}
	figures := map[string]float64{"frame-ms": float64(time.Since(start).Microseconds()) / 1000}
	time.Sleep(timeToRest)
	return figures, restOf(process.Process.Pid, figures)
}

// waitForFrame waits until the screen shows as many colours as only a window has that
// drew itself, and as many at the next look: the frame is there as a whole.
func waitForFrame(path string) error {
	deadline := time.Now().Add(patienceToOpen)
	for before := 0; ; time.Sleep(2 * time.Millisecond) {
		dump, err := os.ReadFile(path)
		if err != nil {
			return fmt.Errorf("read the screen: %w", err)
		}
		found, err := frameColours(dump)
		if err == nil && found >= fewestColours && found == before {
			return nil
		}
		if before = found; time.Now().After(deadline) {
			return fmt.Errorf("the window stayed empty for %v: the screen has %d colours (%v)", patienceToOpen, found, err)
		}
	}
}

// restOf adds what a process uses while nothing is done.
func restOf(pid int, figures map[string]float64) error {
	folder := filepath.Join("/proc", strconv.Itoa(pid))
	before, err := processorTime(readText(filepath.Join(folder, "stat")))
	if err != nil {
		return err
	}
	start := time.Now()
	time.Sleep(timeIdle)
	watched := time.Since(start)
	after, err := processorTime(readText(filepath.Join(folder, "stat")))
	if err != nil {
		return err
	}
	resident, err := residentOf(readText(filepath.Join(folder, "status")))
	if err != nil {
		return err
	}
	figures["idle-%"] = 100 * (after - before).Seconds() / watched.Seconds()
	figures["resident-MB"] = resident / 1e6
	return nil
}

// processorTime reads how long a process was at work out of /proc/PID/stat: the fields
// utime and stime, in hundredths of a second (proc_pid_stat(5)). The name of the program
// before them may hold anything, so the fields are counted from its bracket.
func processorTime(stat string) (time.Duration, error) {
	_, behind, _ := strings.Cut(stat[strings.LastIndex(stat, ")")+1:], " ")
	fields := strings.Fields(behind) // from the third on
	if len(fields) < 13 {
		return 0, errors.New("watch the window: the program ended")
	}
	var ticks int64
	for _, field := range fields[11:13] {
		value, err := strconv.ParseInt(field, 10, 64)
		if err != nil {
			return 0, fmt.Errorf("watch the window: its time is %q", field)
		}
		ticks += value
	}
	return time.Duration(ticks) * 10 * time.Millisecond, nil
}

// residentOf reads VmRSS, in bytes, out of /proc/PID/status, where one kB is 1024 of them
// (proc_pid_status(5)).
func residentOf(status string) (float64, error) {
	value, unit, _ := strings.Cut(valueBehind(status, "VmRSS", ":"), " ")
	kilobytes, err := strconv.ParseFloat(value, 64)
	if err != nil || unit != "kB" {
		return 0, errors.New("watch the window: the program ended")
	}
	return kilobytes * 1024, nil
}
