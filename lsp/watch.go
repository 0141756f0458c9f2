package lsp

import (
	"path"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
)

// register asks the client to tell of changed files and settings, where it can.
func (s *server) register() {
	var list []protocol.Registration
	if s.can.Workspace.DidChangeWatchedFiles.DynamicRegistration {
		list = append(list, protocol.Registration{
			ID: "files", Method: "workspace/didChangeWatchedFiles",
			RegisterOptions: protocol.DidChangeWatchedFilesRegistrationOptions{
				Watchers: []protocol.FileSystemWatcher{{GlobPattern: "**/*" + lint.FileSuffix}},
			},
		})
	}
	if s.can.Workspace.DidChangeConfiguration.DynamicRegistration {
		list = append(list, protocol.Registration{ID: "settings", Method: "workspace/didChangeConfiguration"})
	}
	if len(list) == 0 {
		return
	}
	s.calls.run(func() {
		s.question("client/registerCapability", protocol.RegistrationParams{Registrations: list})
	})
}

func (s *server) didChangeWatchedFiles(p *protocol.DidChangeWatchedFilesParams) error {
	for _, change := range p.Changes {
		key := keyOf(change.URI)
		if s.docs[key] != nil {
			continue // what is open counts, whatever is on disk
		}
		deleted := change.Type == protocol.FileChangeTypeDeleted
		switch {
		case path.Base(key) == lint.ShopFileName && change.Type != protocol.FileChangeTypeChanged:
			s.rehome()
		case strings.HasSuffix(key, lint.FileSuffix):
			s.changedOnDisk(key)
		case deleted:
			s.folderGone(key)
		}
	}
	return nil
}

// changedOnDisk reads a file anew in the shop it belongs to, where that is
// looked after.
func (s *server) changedOnDisk(key string) {
	root, name := s.homeOf(key)
	if shop := s.shops[root]; shop != nil {
		s.reread(shop, name)
		s.rulesChanged(key, shop)
		return
	}
	s.rulesChanged(key, nil)
	for _, folder := range s.folders {
		if within(folder, root) {
			s.shopAt(root)
			return
		}
	}
}

// folderGone takes out what was read below a folder.
func (s *server) folderGone(folder string) {
	for _, shop := range s.shops {
		if shop.live == nil {
			continue
		}
		for _, f := range shop.live.Shop().Files() {
			if key := path.Join(shop.root, f.Name); within(folder, key) && s.docs[key] == nil {
				s.reread(shop, f.Name)
			}
		}
		s.rulesChanged(folder, nil)
	}
}

func (s *server) didChangeWorkspaceFolders(p *protocol.DidChangeWorkspaceFoldersParams) error {
	for _, gone := range p.Event.Removed {
		folder, _ := pathOf(gone.URI)
		for i, f := range s.folders {
			if f == folder {
				s.folders = append(s.folders[:i:i], s.folders[i+1:]...)
				break
			}
		}
	}
	for _, shop := range s.shops {
		if !s.needed(shop) {
			s.drop(shop)
		}
	}
	for _, added := range p.Event.Added {
		s.addFolder(added.URI)
		if folder, ok := pathOf(added.URI); ok {
			s.readFolder(folder)
		}
	}
	return nil
}
