package main

import (
	"cmp"
	"fmt"
	"os"
	"runtime"
	"strconv"
	"strings"
)

// computer is what figures depend on.
type computer struct {
	processor string
	cores     int
	system    string
	toolchain string
	// load is the mean number of programs at work over the last minute.
	load      float64
	loadKnown bool
}

// describeMachine finds out what it can; what a system does not tell stays out.
func describeMachine(m *machine) computer {
	c := computer{cores: runtime.NumCPU(), system: m.system, toolchain: "Go"}
	if version, err := m.read(goTool("env", "GOVERSION")); err == nil {
		c.toolchain = cmp.Or(strings.TrimSpace(version), c.toolchain)
	}
	switch m.system {
	case "linux":
		c.processor = valueBehind(readText("/proc/cpuinfo"), "model name", ":")
		c.system = strings.Trim(valueBehind(readText("/etc/os-release"), "PRETTY_NAME", "="), `"`)
		c.load, c.loadKnown = loadOf(readText("/proc/loadavg"))
	case "darwin":
		if name, err := m.read(command{words: []string{"sysctl", "-n", "machdep.cpu.brand_string"}}); err == nil {
			c.processor = strings.TrimSpace(name)
		}
	case "windows":
		c.processor = os.Getenv("PROCESSOR_IDENTIFIER")
	}
	return c
}

// readText returns a file as text, empty where there is none.
func readText(path string) string {
	data, err := os.ReadFile(path)
	if err != nil {
		return ""
	}
	return string(data)
}

// valueBehind returns what stands behind a name and a mark in the first line that begins
// with them, as in /proc/cpuinfo (proc_cpuinfo(5)) and os-release(5).
func valueBehind(text, name, mark string) string {
	for line := range strings.Lines(text) {
		before, after, found := strings.Cut(line, mark)
		if found && strings.TrimSpace(before) == name {
			return strings.TrimSpace(after)
		}
	}
	return ""
}

// loadOf reads the first number of /proc/loadavg (proc_loadavg(5)).
func loadOf(text string) (load float64, known bool) {
	first, _, _ := strings.Cut(text, " ")
	load, err := strconv.ParseFloat(first, 64)
	return load, err == nil
}

// line names the machine.
func (c computer) line() string {
	parts := []string{}
	if c.processor != "" {
		parts = append(parts, c.processor)
	}
	parts = append(parts, fmt.Sprintf("%d cores", c.cores))
	if c.system != "" {
		parts = append(parts, c.system)
	}
	parts = append(parts, runtime.GOARCH, c.toolchain)
	if c.loadKnown {
		parts = append(parts, fmt.Sprintf("load %.2f at the start", c.load))
	}
	return "Measured on " + strings.Join(parts, ", ") + "; each benchmark on one processor, one after another."
}

// busy is the load, as a share of the cores, from which on other programs are in the way.
const busy = 0.5

// warning is a line that ends with a line end, empty for a machine at rest.
func (c computer) warning() string {
	if !c.loadKnown || c.load < busy*float64(c.cores) {
		return ""
	}
	return fmt.Sprintf("WARNING: the machine is busy with something else (load %.2f on %d cores); the figures are worse than they would be.\n", c.load, c.cores)
}
