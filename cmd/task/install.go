package main

import (
	"errors"
	"fmt"
	"strings"
)

// errCannotInstall says that this machine does not let us install anything; the
// user is told how to.
var errCannotInstall = errors.New("installing is left to the user")

// installPrograms installs the missing programs where that can be done without
// asking: on Debian and its relatives, as root or through a sudo that wants no
// password. Elsewhere it returns errCannotInstall.
func installPrograms(m *machine, missing []program) error {
	prefix, allowed := aptPrefix(m)
	if !allowed {
		return errCannotInstall
	}
	update, install := aptCommands(prefix, debianPackages(missing))
	// A third party's stale list makes the update fail although the packages
	// can be had, so the verdict is left to the installation.
	updateErr := m.run(update)
	if err := m.run(install); err != nil {
		return mirrorError(debianPackages(missing), updateErr, err)
	}
	if still := missingOf(missing, m.has); len(still) > 0 {
		return fmt.Errorf("apt-get installed %s, but %s cannot be found on the PATH",
			strings.Join(debianPackages(missing), " "), strings.Join(commandsOf(still), ", "))
	}
	return nil
}

// aptPrefix returns the words that give apt-get the right to install, and
// whether there are any.
func aptPrefix(m *machine) (words []string, allowed bool) {
	if m.system != "linux" || !m.has("apt-get") {
		return nil, false
	}
	if m.superuser() {
		return nil, true
	}
	if !m.has("sudo") {
		return nil, false
	}
	if _, err := m.read(command{words: []string{"sudo", "-n", "true"}}); err != nil {
		return nil, false
	}
	return []string{"sudo", "-n"}, true
}

// aptCommands returns the commands that refresh the package lists and install the
// packages. Slow mirrors get three tries of half a minute, and another apt-get
// that is at work gets two minutes to end.
func aptCommands(prefix, packages []string) (update, install command) {
	words := func(more ...string) command {
		line := append([]string{}, prefix...)
		line = append(line, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get",
			"-o", "Acquire::Retries=3", "-o", "Acquire::http::Timeout=30", "-o", "DPkg::Lock::Timeout=120")
		return command{words: append(line, more...)}
	}
	install = words("install", "-y", "--no-install-recommends")
	install.words = append(install.words, packages...)
	return words("update"), install
}

func mirrorError(packages []string, updateErr, installErr error) error {
	reason := "the package lists were refreshed, so look at the messages of apt-get above"
	if updateErr != nil {
		reason = "refreshing the package lists failed before that; the mirror is down, slow or not reachable from here"
	}
	return fmt.Errorf("apt-get could not install %s: %w\n%s.\nTry again later, or run the tests without them: go run ./cmd/task test -no-install",
		strings.Join(packages, " "), installErr, reason)
}
