package cli

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/rules/handbook"
)

func pagesIn(t *testing.T) (s *session, folder string) {
	t.Helper()
	folder = t.TempDir()
	return &session{Env: Env{Folder: folder, Err: io.Discard}, ctx: context.Background()}, folder
}

func namesIn(t *testing.T, folder string) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func someFiles(names ...string) (files []handbook.File) {
	for _, n := range names {
		files = append(files, handbook.File{Name: n, Bytes: []byte(n)})
	}
	return files
}

// What was there before is there until all of the new is, and nothing is left
// beside it.
func TestPagesAreWrittenWholeOrNotAtAll(t *testing.T) {
	s, folder := pagesIn(t)
	require.NoError(t, s.writePages("book", someFiles("a.html", "b.html")))
	assert.Equal(t, []string{"a.html", "b.html", madeFile}, namesIn(t, filepath.Join(folder, "book")))

	// The second file cannot be written.
	assert.Error(t, s.writePages("book", someFiles("c.html", "no/such/folder.html")))
	assert.Equal(t, []string{"a.html", "b.html", madeFile}, namesIn(t, filepath.Join(folder, "book")))
	assert.Error(t, s.writePages("other", someFiles("c.html", "no/such/folder.html")))
	assert.Equal(t, []string{"book"}, namesIn(t, folder))

	// Stopped before it.
	stopped, stop := context.WithCancel(context.Background())
	stop()
	s.ctx = stopped
	assert.ErrorIs(t, s.writePages("book", someFiles("c.html")), errStopped)
	assert.Equal(t, []string{"a.html", "b.html", madeFile}, namesIn(t, filepath.Join(folder, "book")))

	s.ctx = context.Background()
	require.NoError(t, s.writePages("book", someFiles("c.html")))
	assert.Equal(t, []string{"c.html", madeFile}, namesIn(t, filepath.Join(folder, "book")))
	assert.Equal(t, []string{"book"}, namesIn(t, folder))
}

// A folder with anything in it that was not made with the pages is left alone,
// whatever its list says.
func TestForeignFoldersAreLeftAlone(t *testing.T) {
	for name, put := range map[string]func(folder string) error{
		"a file": func(f string) error { return os.WriteFile(filepath.Join(f, "notes.txt"), nil, 0o600) },
		"a file like the list": func(f string) error {
			return os.WriteFile(filepath.Join(f, madeFile), []byte("notes.txt\n"), 0o600)
		},
		"a hidden file": func(f string) error { return os.WriteFile(filepath.Join(f, ".git"), nil, 0o600) },
		"a folder called like a page": func(f string) error {
			return os.MkdirAll(filepath.Join(f, "a.html", "mine"), 0o700)
		},
	} {
		t.Run(name, func(t *testing.T) {
			s, folder := pagesIn(t)
			book := filepath.Join(folder, "book")
			if name != "a file like the list" {
				require.NoError(t, s.writePages("book", someFiles("a.html")))
				require.NoError(t, os.Remove(filepath.Join(book, "a.html")))
			} else {
				require.NoError(t, os.Mkdir(book, 0o700))
			}
			require.NoError(t, put(book))
			before := namesIn(t, book)
			assert.Error(t, s.writePages("book", someFiles("b.html")))
			assert.Equal(t, before, namesIn(t, book))
			assert.False(t, slices.Contains(before, "b.html"))
			assert.Equal(t, []string{"book"}, namesIn(t, folder))
		})
	}
}
