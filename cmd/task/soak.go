package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"time"
)

// soaking is what the user asked of the task soak.
type soaking struct {
	length time.Duration
	strict bool
}

func soakingOf(args []string) (soaking, error) {
	options := flag.NewFlagSet("soak", flag.ContinueOnError)
	length := options.Duration("for", 30*time.Minute, "")
	strict := options.Bool("strict", false, "")
	rest, err := parse(options, args)
	if err != nil {
		return soaking{}, err
	}
	if *length <= 0 {
		return soaking{}, usageError{fmt.Sprintf("-for is %v: give a time such as 3m or 30m", *length)}
	}
	return soaking{*length, *strict}, noMore(rest)
}

// command returns the command that soaks the program. Building it, and a step that
// hangs, may take as long again.
func (s soaking) command(pictures string) command {
	words := []string{
		"test", "-count=1", "-v", "-run", "^TestSoak$", "-timeout", (2*s.length + 30*time.Minute).String(),
		"./app/window", "-soak", s.length.String(), "-keep", pictures,
	}
	if s.strict {
		words = append(words, "-strict")
	}
	return goTool(words...)
}

// runSoak uses the real window for a long time and reports how that went.
func runSoak(m *machine, args []string) error {
	asked, err := soakingOf(args)
	if err != nil {
		return err
	}
	if m.system != "linux" {
		return errors.New("soak the window: it is driven under Xvfb, which is at home on Linux; run this there")
	}
	if missing := missingOf(windowParts(m.system), m.has); len(missing) > 0 {
		if err := installPrograms(m, missing); err != nil {
			return fmt.Errorf("soak the window: it needs %s: %w", windowPartList, err)
		}
	}
	pictures := m.path("dist", "soak")
	if err := os.RemoveAll(pictures); err != nil {
		return fmt.Errorf("make room for pictures of the window: %w", err)
	}
	if err := m.run(asked.command(pictures)); err != nil {
		return err
	}
	fmt.Fprintln(m.out, "Pictures of the window are in", pictures)
	return nil
}
