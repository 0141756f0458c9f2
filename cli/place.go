package cli

import (
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"strings"
)

// place is a path of this system as a volume ("/", `C:\` or `\\nas\wax\`) and
// a slash path in it, which is what the engine knows.
type place struct{ volume, path string }

func (p place) full() string { return filepath.Join(p.volume, filepath.FromSlash(p.path)) }

// open opens the folder at a place, with no way out of it.
func (p place) open() (fs.FS, io.Closer, error) {
	root, err := os.OpenRoot(p.full())
	if err != nil {
		return nil, nil, err
	}
	return root.FS(), root, nil
}

// locate is the place that somebody names from the working folder.
func (s *session) locate(arg string) place {
	if runtime.GOOS == "windows" {
		return windowsPlace(s.Folder, arg)
	}
	full := arg
	if !filepath.IsAbs(full) {
		full = filepath.Join(s.Folder, full)
	}
	return inVolume("/", full)
}

// shown is the path as the user would type it from where they are, with "/".
func (s *session) shown(p place) string {
	if short, err := filepath.Rel(s.Folder, p.full()); err == nil {
		return filepath.ToSlash(short)
	}
	return filepath.ToSlash(p.full()) // on another drive
}

// inVolume is a path with "/" in a volume; nothing leads out of it.
func inVolume(volume, name string) place {
	name = path.Clean("/" + name)[1:]
	if name == "" {
		name = "."
	}
	return place{volume, name}
}

// windowsPlace is the place that a path of Windows names from a folder on. One
// place has one volume, however it is written: drives by a capital letter, and
// without the prefix for long paths, which Go puts in front where it is needed.
// It is pure, so that it is tested on every system.
func windowsPlace(folder, arg string) place {
	volume, below := windowsVolume(folder)
	here := below + "/"
	arg = strings.ReplaceAll(arg, "/", `\`)
	if v, rest := windowsVolume(arg); v != "" {
		if isShare(v) || strings.HasPrefix(rest, "/") {
			return inVolume(v, rest)
		}
		// "C:tide" is in the working folder of that drive, which is known of one
		// drive only.
		if v != volume {
			here = ""
		}
		return inVolume(v, here+rest)
	}
	rest := strings.ReplaceAll(arg, `\`, "/")
	if strings.HasPrefix(rest, "/") { // in the drive at hand
		here = ""
	}
	return inVolume(volume, here+rest)
}

// windowsVolume cuts a path of Windows into its volume and the rest, with "/".
// Without a drive or a share the volume is "".
func windowsVolume(full string) (volume, rest string) {
	full = strings.ReplaceAll(full, "/", `\`)
	if share, ok := strings.CutPrefix(full, `\\?\UNC\`); ok {
		full = `\\` + share
	}
	full = strings.TrimPrefix(full, `\\?\`)
	switch {
	case hasDrive(full):
		volume, full = strings.ToUpper(full[:2])+`\`, full[2:]
	case isShare(full):
		machine, after, _ := strings.Cut(full[2:], `\`)
		share, below, _ := strings.Cut(after, `\`)
		volume, full = `\\`+machine+`\`+share+`\`, `\`+below
	}
	return volume, strings.ReplaceAll(full, `\`, "/")
}

func isShare(full string) bool { return strings.HasPrefix(full, `\\`) }

// hasDrive says whether a path begins with the letter of a drive and a colon.
func hasDrive(full string) bool {
	return len(full) >= 2 && full[1] == ':' && (full[0]|0x20) >= 'a' && (full[0]|0x20) <= 'z'
}
