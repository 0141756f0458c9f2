package lsp

import (
	"io/fs"
	"path"
	"time"

	"wickrule/lint"
)

// pollEvery is how often the files are looked at for a client that does not
// tell when they change, and pollShare how small a part of the time that may
// take.
const (
	pollEvery = 2 * time.Second
	pollShare = 50
)

// stamp is what a file looks like without reading it.
type stamp struct {
	size    int64
	changed time.Time
}

// poll looks for files that changed on disk, beside the loop.
func (s *server) poll() {
	if s.can.Workspace.DidChangeWatchedFiles.DynamicRegistration {
		return
	}
	s.calls.run(func() {
		seen := map[string]map[string]stamp{} // by the shop's root, by name
		pause := pollEvery
		for {
			select {
			case <-time.After(pause):
			case <-s.calls.ctx.Done():
				return
			}
			start := time.Now()
			now := s.now.Load()
			for root := range now.shops {
				if _, lone := now.docs[root]; lone {
					continue
				}
				stamps := s.stamps(root)
				if before, ok := seen[root]; ok {
					s.tell(root, before, stamps)
				} else {
					s.tell(root, recent(stamps, start.Add(-10*time.Second)), stamps)
				}
				seen[root] = stamps
			}
			for root := range seen {
				if now.shops[root] == nil {
					delete(seen, root)
				}
			}
			pause = max(pollEvery, pollShare*time.Since(start))
		}
	})
}

// stamps looks at every file of a shop on disk.
func (s *server) stamps(root string) map[string]stamp {
	folder, closer, err := s.Folder(root)
	if err != nil {
		return map[string]stamp{}
	}
	defer closer.Close()
	names, _ := lint.FileNames(folder)
	stamps := make(map[string]stamp, len(names))
	for _, name := range names {
		if info, err := fs.Stat(folder, name); err == nil {
			stamps[name] = stamp{info.Size(), info.ModTime()}
		}
	}
	return stamps
}

// recent is the stamps without those of files that changed after a time: they
// may have changed after they were read.
func recent(stamps map[string]stamp, after time.Time) map[string]stamp {
	older := map[string]stamp{}
	for name, st := range stamps {
		if st.changed.Before(after) {
			older[name] = st
		}
	}
	return older
}

// tell has the loop look at what is not as it was.
func (s *server) tell(root string, before, now map[string]stamp) {
	look := func(name string) {
		key := path.Join(root, name)
		s.inbox.put(func() {
			switch {
			case s.docs[key] != nil:
			case name == lint.ShopFileName && (before[name] == stamp{}) != (now[name] == stamp{}):
				s.rehome()
			default:
				s.changedOnDisk(key)
			}
		})
	}
	for name, st := range now {
		if before[name] != st {
			look(name)
		}
	}
	for name := range before {
		if _, there := now[name]; !there {
			look(name)
		}
	}
}
