package cli

import (
	"archive/zip"
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os/exec"
	"path"
	"strings"

	"wickrule/lint"
)

// git asks git something and is what it prints. What git itself was told by
// its surroundings it is told too: in a hook that is which index is meant.
func (s *session) git(input string, args ...string) (string, error) {
	var out, complaint bytes.Buffer
	command := exec.CommandContext(s.ctx, "git", args...)
	command.Dir, command.Stdin, command.Stdout, command.Stderr = s.Folder, strings.NewReader(input), &out, &complaint
	err := command.Run()
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return "", errors.New("git is not among the programs found here (PATH)")
	case err != nil:
		lines := strings.Split(strings.TrimSpace(complaint.String()), "\n")
		if said := lines[len(lines)-1]; said != "" {
			return "", fmt.Errorf("git says: %s", strings.TrimPrefix(said, "fatal: "))
		}
		return "", fmt.Errorf("git %s did not work: %w", args[0], err)
	}
	return out.String(), nil
}

// gitTree is what stands in git's tree under a file's path.
type gitTree map[string]gitFile

type gitFile struct{ mode, id string }

// How git writes the mode of a link, which holds the path it leads to.
const gitLink = "120000"

// recipeFiles lists the recipe files of a tree: paths from the top of the
// repository, whatever the working folder is.
func (s *session) recipeFiles(tree string) (gitTree, error) {
	list, err := s.git("", "ls-tree", "-r", "-z", "--full-tree", tree)
	if err != nil {
		return nil, err
	}
	files := gitTree{}
	for entry := range strings.SplitSeq(list, "\x00") {
		about, name, _ := strings.Cut(entry, "\t")
		if words := strings.Fields(about); len(words) == 3 && words[1] == "blob" && strings.HasSuffix(name, lint.FileSuffix) {
			files[name] = gitFile{words[0], words[2]}
		}
	}
	return files, nil
}

// resolved is the file that a path of the tree stands for: itself, or what
// its link leads to within the tree. Links are followed a few steps only.
func (t gitTree) resolved(name string, held map[string]string) (id string, ok bool) {
	for range 8 {
		f, there := t[name]
		if !there {
			return "", false
		}
		if f.mode != gitLink {
			return f.id, true
		}
		name = path.Join(path.Dir(name), held[f.id])
	}
	return "", false
}

// fileSystem is the tree as a file system of recipe files. Links that lead to
// none of its files are left out, and their names returned.
func (s *session) fileSystem(t gitTree) (fsys fs.FS, astray []string, err error) {
	held, err := s.objects(t)
	if err != nil {
		return nil, nil, err
	}
	// An archive in memory is a file system that the library reads.
	var archive bytes.Buffer
	w := zip.NewWriter(&archive)
	for name := range t {
		id, ok := t.resolved(name, held)
		if !ok {
			astray = append(astray, name)
			continue
		}
		f, err := w.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Store})
		if err != nil {
			return nil, nil, err
		}
		if _, err := io.WriteString(f, held[id]); err != nil {
			return nil, nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, nil, err
	}
	r, err := zip.NewReader(bytes.NewReader(archive.Bytes()), int64(archive.Len()))
	return r, astray, err
}

// objects reads what the files of a tree hold, by their ids.
func (s *session) objects(t gitTree) (map[string]string, error) {
	var ids strings.Builder
	for _, f := range t {
		ids.WriteString(f.id + "\n")
	}
	answer, err := s.git(ids.String(), "cat-file", "--batch")
	if err != nil {
		return nil, err
	}
	held := map[string]string{}
	for r := bufio.NewReader(strings.NewReader(answer)); ; {
		head, err := r.ReadString('\n')
		if err == io.EOF {
			return held, nil
		}
		var id, kind string
		var size int64
		if _, err := fmt.Sscanf(head, "%s %s %d", &id, &kind, &size); err != nil {
			return nil, fmt.Errorf("git lacks a file of this repository: %s", strings.TrimSpace(head))
		}
		text := make([]byte, size+1) // and the line end behind it
		if _, err := io.ReadFull(r, text); err != nil {
			return nil, fmt.Errorf("git broke off within a file: %w", err)
		}
		held[id] = string(text[:size])
	}
}
