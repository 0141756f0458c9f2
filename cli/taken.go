package cli

import (
	"os"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
)

// takenFolders are the folders that shops take rules from, as places of the
// disk.
type takenFolders map[place]bool

func (t takenFolders) add(volume string, list []lint.Taken) {
	for _, one := range list {
		if one.Problem == "" {
			t[place{volume, one.Path}] = true
		}
	}
}

// holds says whether a place is such a folder or lies in one.
func (t takenFolders) holds(p place) bool {
	for folder := range t {
		if folder.volume == p.volume && (folder.path == p.path || strings.HasPrefix(p.path, folder.path+"/")) {
			return true
		}
	}
	return false
}

// loose says whether it is a folder of files that no shop file stands over.
func (f found) loose() bool {
	_, ok := lint.ShopAbove(os.DirFS(f.volume), f.Root)
	return !ok
}

// sayTakenOnce leaves what is found in rules that several shops take to the
// first of them.
func sayTakenOnce(reports []*lint.Report) {
	type said struct {
		file, rule, message string
		at                  int32
	}
	seen := map[said]bool{}
	for _, r := range reports {
		r.Findings = slices.DeleteFunc(r.Findings, func(f lint.Found) bool {
			if f.At.File == nil || !lint.IsTaken(f.At.File.Name) {
				return false
			}
			s := said{report.Located(r.Shop.Root, f.At.File.Name), f.Rule.Name, f.Message, f.At.Span.Start}
			was := seen[s]
			seen[s] = true
			return was
		})
	}
}
