package editors

import (
	"bufio"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// display is a screen that nobody looks at, with what is typed on it and what
// is drawn on it.
type display struct {
	t      *testing.T
	number string // ":1"
	frame  string // the file the screen is drawn into
}

// startDisplay starts one, with a number that is free, and a window manager: Kate
// takes some keys only while it is told that its window is the active one.
func startDisplay(t *testing.T) *display {
	t.Helper()
	folder := t.TempDir()
	free, told, err := os.Pipe()
	require.NoError(t, err)
	defer free.Close()
	cmd := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1280x900x24", "-nolisten", "tcp", "-noreset", "-fbdir", folder) // else it starts anew when xdotool goes
	cmd.ExtraFiles = []*os.File{told}
	var complaints screen
	start := func(cmd *exec.Cmd) {
		cmd.Stdout, cmd.Stderr = &complaints, &complaints
		require.NoError(t, cmd.Start())
		t.Cleanup(func() {
			cmd.Process.Kill()
			cmd.Wait()
		})
	}
	start(cmd)
	told.Close()
	number, err := bufio.NewReader(free).ReadString('\n')
	require.NoError(t, err, complaints.String())
	d := &display{t, ":" + strings.TrimSpace(number), filepath.Join(folder, "Xvfb_screen0")}
	manager := exec.Command("openbox", "--sm-disable")
	manager.Env = append(os.Environ(), "DISPLAY="+d.number, "HOME="+folder, "XDG_CONFIG_HOME="+folder, "XDG_CACHE_HOME="+folder)
	start(manager)
	eventually(t, "the window manager", func() (any, bool) {
		_, err := d.tool("get_num_desktops")
		return complaints.String(), err == nil
	})
	return d
}

// tool runs xdotool on it. It fails where nothing is found.
func (d *display) tool(args ...string) (string, error) {
	cmd := exec.Command("xdotool", args...)
	cmd.Env = append(os.Environ(), "DISPLAY="+d.number)
	out, err := cmd.Output()
	return string(out), err
}

// press presses keys, one after the other.
func (d *display) press(keys ...string) {
	d.t.Helper()
	for len(keys) > 0 {
		some := keys[:min(len(keys), 20)]
		keys = keys[len(some):]
		_, err := d.tool(append([]string{"key", "--delay", "15"}, some...)...)
		require.NoError(d.t, err, some)
	}
}

// typed types a text, key by key.
func (d *display) typed(text string) {
	d.t.Helper()
	_, err := d.tool("type", "--delay", "40", text)
	require.NoError(d.t, err)
}

// windows are those to be seen whose title holds a text, or all with one.
func (d *display) windows(title string) []string {
	out, _ := d.tool("search", "--onlyvisible", "--name", title)
	return strings.Fields(out)
}

// focus waits for a window and sends the keys there from now on.
func (d *display) focus(title string) (window string) {
	d.t.Helper()
	eventually(d.t, "the window "+title, func() (any, bool) {
		found := d.windows(title)
		if len(found) > 0 {
			window = found[0]
		}
		return d.titles(), len(found) > 0
	})
	_, err := d.tool("windowactivate", "--sync", window)
	require.NoError(d.t, err)
	return window
}

// dialog waits for a window, has something done in it, and waits until it is
// closed.
func (d *display) dialog(title string, do func()) {
	d.t.Helper()
	d.focus(title)
	do()
	eventually(d.t, "the end of the window "+title, func() (any, bool) { return d.titles(), len(d.windows(title)) == 0 })
}

func (d *display) titles() (list []string) {
	for _, w := range d.windows(".") {
		name, _ := d.tool("getwindowname", w)
		list = append(list, strings.TrimSpace(name))
	}
	return list
}

// popped does something and waits for what pops up: menus, lists of offers and
// hovers are windows without a title.
func (d *display) popped(what string, do func()) {
	d.t.Helper()
	before := len(d.windows(""))
	do()
	eventually(d.t, what, func() (any, bool) { now := len(d.windows("")); return now, now > before })
}

// color is what is drawn at a place: red, green and blue.
type color [3]byte

// lines looks at every line of the screen for a color, and gives the number of
// its pixels in each line that has any.
func (d *display) lines(of color) map[int]int {
	d.t.Helper()
	data, err := os.ReadFile(d.frame)
	require.NoError(d.t, err)
	field := func(n int) int { return int(binary.BigEndian.Uint32(data[4*n:])) } // X Window Dump, version 7
	require.Equal(d.t, 7, field(1))
	require.Equal(d.t, 32, field(11), "bits a pixel")
	require.Zero(d.t, field(7), "the byte order")
	width, height, stride := field(4), field(5), field(12)
	pixels := data[field(0)+12*field(19):]
	found := map[int]int{}
	for y := range height {
		for x := range width {
			at := y*stride + 4*x
			if pixels[at+2] == of[0] && pixels[at+1] == of[1] && pixels[at] == of[2] {
				found[y]++
			}
		}
	}
	return found
}

// settled waits until nothing has been drawn for a while.
func (d *display) settled() {
	d.t.Helper()
	was := ""
	eventually(d.t, "the screen to come to rest", func() (any, bool) {
		time.Sleep(250 * time.Millisecond)
		data, err := os.ReadFile(d.frame)
		same := err == nil && string(data) == was
		was = string(data)
		return strconv.Itoa(len(was)) + " bytes", same
	})
}
