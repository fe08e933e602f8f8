package geomtest

import (
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
)

// TakeNetwork makes a command start in a network namespace of its own, without an
// interface that is up: no address can be reached from it, not even this machine's. It
// tells whether the system allows that; on a screen whose server has a socket in /tmp a
// window still opens.
func TakeNetwork(t testing.TB, command *exec.Cmd) bool {
	t.Helper()
	for _, way := range []*syscall.SysProcAttr{asRoot(), asUser()} {
		probe := exec.Command("cat", "/proc/self/net/dev")
		probe.SysProcAttr = way
		output, err := probe.Output()
		if err != nil {
			continue
		}
		if names := interfaces(string(output)); len(names) != 1 || names[0] != "lo" {
			t.Fatalf("the new network namespace has the interfaces %q", names)
		}
		command.SysProcAttr = way
		return true
	}
	t.Log("this system allows no network namespace, so the network stays within reach")
	return false
}

func asRoot() *syscall.SysProcAttr { return &syscall.SysProcAttr{Cloneflags: syscall.CLONE_NEWNET} }

// asUser takes a user namespace as well, in which anyone may make the other one.
func asUser() *syscall.SysProcAttr {
	return &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWUSER | syscall.CLONE_NEWNET,
		UidMappings: []syscall.SysProcIDMap{{ContainerID: os.Getuid(), HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{ContainerID: os.Getgid(), HostID: os.Getgid(), Size: 1}},
	}
}

// interfaces returns the names in the table of the kernel, one a line before a colon.
func interfaces(table string) []string {
	var names []string
	for line := range strings.Lines(table) {
		if name, _, found := strings.Cut(line, ":"); found {
			names = append(names, strings.TrimSpace(name))
		}
	}
	return names
}
