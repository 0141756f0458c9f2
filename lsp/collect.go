package lsp

import (
	"runtime"
	"runtime/metrics"
	"time"
)

// Collecting the garbage of a shop of thousands of recipes takes tens of
// milliseconds, in which an edit waits several times as long as otherwise. So
// it is done where nobody waits: at the end of reading a shop, and in the first
// pause after much has been thrown away.
const (
	pause   = 2 * time.Second
	muchFor = 4 // a quarter of what is in use
)

// worthCollecting says whether much has been added to what the last collection
// left in use.
func worthCollecting() bool {
	samples := []metrics.Sample{{Name: "/gc/heap/live:bytes"}, {Name: "/memory/classes/heap/objects:bytes"}}
	metrics.Read(samples)
	kept, held := samples[0].Value.Uint64(), samples[1].Value.Uint64()
	return held > kept+kept/muchFor
}

// atPause is called where the loop has had nothing to do for a while.
func (s *server) atPause() {
	if worthCollecting() {
		s.calls.run(runtime.GC)
	}
}
