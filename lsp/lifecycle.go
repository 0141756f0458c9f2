package lsp

import (
	"encoding/json"
	"time"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

// notified does what a notification says. It runs on the loop.
type notified func(s *server, params json.RawMessage) error

// notifications lists every notification that is acted on, by method.
func notifications() map[string]notified {
	return map[string]notified{
		"initialized":                         told((*server).initialized),
		"textDocument/didOpen":                told((*server).didOpen),
		"textDocument/didChange":              told((*server).didChange),
		"textDocument/didClose":               told((*server).didClose),
		"workspace/didChangeWatchedFiles":     told((*server).didChangeWatchedFiles),
		"workspace/didChangeWorkspaceFolders": told((*server).didChangeWorkspaceFolders),
		"workspace/didChangeConfiguration":    told((*server).didChangeConfiguration),
	}
}

func told[P any](act func(*server, *P) error) notified {
	return func(s *server, params json.RawMessage) error {
		p, err := decode[P](params)
		if err != nil {
			return err
		}
		return act(s, p)
	}
}

type initializeParams struct {
	ProcessID             *int                       `json:"processId"`
	RootURI               *string                    `json:"rootUri"`
	RootPath              *string                    `json:"rootPath"`
	WorkspaceFolders      []protocol.WorkspaceFolder `json:"workspaceFolders"`
	InitializationOptions *settings                  `json:"initializationOptions"`
	Capabilities          client                     `json:"capabilities"`
}

type initializeResult struct {
	Capabilities serverCapabilities `json:"capabilities"`
	ServerInfo   struct {
		Name    string `json:"name"`
		Version string `json:"version,omitempty"`
	} `json:"serverInfo"`
}

func (s *server) initialize(params json.RawMessage) (any, error) {
	p, err := decode[initializeParams](params)
	if err != nil {
		return nil, err
	}
	s.can = &p.Capabilities
	s.enc = s.can.encoding()
	if p.InitializationOptions != nil {
		s.wants = *p.InitializationOptions
	}
	switch {
	case p.WorkspaceFolders != nil:
		for _, folder := range p.WorkspaceFolders {
			s.addFolder(folder.URI)
		}
	case p.RootURI != nil:
		s.addFolder(*p.RootURI)
	case p.RootPath != nil:
		s.addFolder(uriOfPath(*p.RootPath))
	}
	if p.ProcessID != nil && s.Alive != nil {
		go s.watchProcess(*p.ProcessID)
	}
	s.state = serving
	s.renew()
	var result initializeResult
	result.Capabilities = s.capabilities()
	result.ServerInfo.Name, result.ServerInfo.Version = "wickrule", s.Version
	return result, nil
}

// watchProcess ends the connection when the process that the client belongs to
// is gone: nobody is left to close it.
func (s *server) watchProcess(id int) {
	tick := time.NewTicker(time.Second)
	defer tick.Stop()
	for range tick.C {
		if s.calls.ctx.Err() != nil {
			return
		}
		if !s.Alive(id) {
			s.inbox.put(s.end)
			return
		}
	}
}

func (s *server) addFolder(uri string) {
	if folder, ok := pathOf(uri); ok {
		s.folders = append(s.folders, folder)
	}
}

func (s *server) initialized(*struct{}) error {
	s.watchDay()
	s.register()
	s.poll()
	s.fetchSettings()
	for _, folder := range s.folders {
		s.readFolder(folder)
	}
	return nil
}

// watchDay takes note of midnight: concessions end.
func (s *server) watchDay() {
	day := s.Today()
	go func() {
		tick := time.NewTicker(time.Minute)
		defer tick.Stop()
		for {
			select {
			case <-s.calls.ctx.Done():
				return
			case <-tick.C:
				if now := s.Today(); now != day {
					day = now
					s.inbox.put(s.newDay)
				}
			}
		}
	}()
}

func (s *server) newDay() {
	for _, shop := range s.shops {
		if shop.live != nil {
			shop.live.SetToday(s.Today())
		}
	}
	s.renew()
}
