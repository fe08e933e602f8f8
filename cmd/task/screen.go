package main

import (
	"bufio"
	"errors"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"time"
)

// How long a window may take to come, to draw itself, and to go.
const (
	patienceToOpen  = 3 * time.Minute
	timeToDraw      = 8 * time.Second
	patienceToClose = 30 * time.Second
)

// fewestColours is how many colours the picture of a window has at least that drew
// itself; one that stayed empty has one or two.
const fewestColours = 200

// showHere starts a program on a screen that no one sees, waits for a window with the
// words in its title, writes a picture of the screen to a file, and closes the program
// by its own keys.
func showHere(root string, c command, title, picture string) error {
	fmt.Println("»", c)
	display, stop, err := openScreen()
	if err != nil {
		return err
	}
	defer stop()
	c.env = append(append([]string{}, c.env...), "DISPLAY="+display, "WAYLAND_DISPLAY=")
	process := prepare(root, c)
	if err := process.Start(); err != nil {
		return fmt.Errorf("%s: %w", c, err)
	}
	ended := make(chan error, 1)
	go func() { ended <- process.Wait() }()
	err = photograph(display, title, picture, ended)
	if err == nil {
		err = closeWindow(display, ended)
	}
	if err != nil {
		process.Process.Kill() // it may have ended, which is as well
		return fmt.Errorf("%s: %w", c, err)
	}
	return nil
}

// openScreen starts Xvfb, with more options where some are given, and returns its display
// and what ends it.
func openScreen(options ...string) (display string, stop func(), err error) {
	read, write, err := os.Pipe()
	if err != nil {
		return "", nil, fmt.Errorf("open a screen: %w", err)
	}
	defer read.Close()
	server := exec.Command("Xvfb", append([]string{"-noreset", "-displayfd", "3", "-screen", "0", "1440x900x24"}, options...)...)
	server.ExtraFiles = []*os.File{write}
	err = server.Start()
	write.Close()
	if err != nil {
		return "", nil, fmt.Errorf("open a screen: %w", err)
	}
	stop = func() {
		server.Process.Signal(syscall.SIGTERM) // killed, it would leave the display locked
		server.Wait()
	}
	number, err := bufio.NewReader(read).ReadString('\n')
	if err != nil {
		stop()
		return "", nil, fmt.Errorf("open a screen: Xvfb named no display: %w", err)
	}
	return ":" + strings.TrimSpace(number), stop, nil
}

// onScreen runs a program on the display.
func onScreen(display string, words ...string) error {
	program := exec.Command(words[0], words[1:]...)
	program.Env = append(os.Environ(), "DISPLAY="+display)
	if output, err := program.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", strings.Join(words, " "), err, output)
	}
	return nil
}

// photograph waits for the window, gives it time to draw itself, and takes a picture.
func photograph(display, title, picture string, ended <-chan error) error {
	deadline := time.After(patienceToOpen)
	for onScreen(display, "xdotool", "search", "--onlyvisible", "--name", title) != nil {
		select {
		case err := <-ended:
			return fmt.Errorf("the program ended without a window (%v)", err)
		case <-deadline:
			return fmt.Errorf("no window named %q within %v", title, patienceToOpen)
		case <-time.After(time.Second):
		}
	}
	time.Sleep(timeToDraw)
	if err := onScreen(display, "import", "-window", "root", picture); err != nil {
		return fmt.Errorf("take a picture of the window: %w", err)
	}
	return looksDrawn(picture)
}

// looksDrawn is an error where a picture has too few colours to be that of the window.
func looksDrawn(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return fmt.Errorf("look at the picture of the window: %w", err)
	}
	defer file.Close()
	picture, err := png.Decode(file)
	if err != nil {
		return fmt.Errorf("look at the picture of the window: %w", err)
	}
	if found := colours(picture); found < fewestColours {
		return fmt.Errorf("the window stayed empty: its picture has %d colours, want %d at least", found, fewestColours)
	}
	return nil
}

// colours counts the colours of a picture.
func colours(picture image.Image) int {
	seen := map[[3]uint32]bool{}
	bounds := picture.Bounds()
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			r, g, b, _ := picture.At(x, y).RGBA()
			seen[[3]uint32{r, g, b}] = true
		}
	}
	return len(seen)
}

// closeWindow presses the keys that leave the program and waits for its end.
func closeWindow(display string, ended <-chan error) error {
	if err := onScreen(display, "xdotool", "key", "ctrl+q"); err != nil {
		return fmt.Errorf("close the window: %w", err)
	}
	select {
	case err := <-ended:
		if err != nil {
			return fmt.Errorf("the program ended badly: %w", err)
		}
		return nil
	case <-time.After(patienceToClose):
		return errors.New("the program did not end when it was told to")
	}
}
