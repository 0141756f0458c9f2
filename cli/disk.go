package cli

import (
	"io"
	"io/fs"
	"os"
	"runtime"
	"strings"
)

// wholeDisk is all of this system's files as one file system, by slash paths
// from its root.
func wholeDisk() fs.FS {
	if runtime.GOOS == "windows" {
		return drives{os.DirFS}
	}
	return os.DirFS("/")
}

// folderOfDisk opens a folder of the whole disk, with no way out of it.
func folderOfDisk(name string) (fs.FS, io.Closer, error) {
	if runtime.GOOS != "windows" {
		return place{"/", name}.open()
	}
	volume, rest, ok := volumeOf(name)
	if !ok {
		return nil, nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return place{volume, rest}.open()
}

// drives is all drives and shares of Windows as one file system: a path begins
// with the letter of a drive ("c:/shop") or, of a share, with two backslashes
// and the machine (`\\nas/wax/shop`), as an editor's addresses are read. Of is
// the file system of a volume.
type drives struct{ of func(volume string) fs.FS }

// volumeOf is the volume that such a path lies in, and the rest of the path.
func volumeOf(name string) (volume, rest string, ok bool) {
	first, rest, _ := strings.Cut(name, "/")
	switch {
	case len(first) == 2 && hasDrive(first):
		volume = strings.ToUpper(first) + `\`
	case isShare(first) && len(first) > 2 && rest != "":
		var share string
		share, rest, _ = strings.Cut(rest, "/")
		volume = first + `\` + share + `\`
	default:
		return "", "", false
	}
	if rest == "" {
		rest = "."
	}
	return volume, rest, true
}

func (d drives) find(op, name string) (fs.FS, string, error) {
	volume, rest, ok := volumeOf(name)
	if !ok || !fs.ValidPath(rest) {
		return nil, "", &fs.PathError{Op: op, Path: name, Err: fs.ErrNotExist}
	}
	return d.of(volume), rest, nil
}

func (d drives) Open(name string) (fs.File, error) {
	of, rest, err := d.find("open", name)
	if err != nil {
		return nil, err
	}
	return of.Open(rest)
}

func (d drives) Stat(name string) (fs.FileInfo, error) {
	of, rest, err := d.find("stat", name)
	if err != nil {
		return nil, err
	}
	return fs.Stat(of, rest)
}

func (d drives) ReadFile(name string) ([]byte, error) {
	of, rest, err := d.find("open", name)
	if err != nil {
		return nil, err
	}
	return fs.ReadFile(of, rest)
}

func (d drives) ReadDir(name string) ([]fs.DirEntry, error) {
	of, rest, err := d.find("open", name)
	if err != nil {
		return nil, err
	}
	return fs.ReadDir(of, rest)
}
