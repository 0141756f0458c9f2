package report

import (
	"encoding/json"
	"fmt"
	"io"
	"path"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// SARIF writes the document in the Static Analysis Results Interchange Format,
// OASIS standard 2.1.0 with errata 01: one run, with the rules that speak, their
// help, the fixes, concessions as suppressions, and what could not be checked
// as notifications. Columns count Unicode code points. Files are named from the
// folder the check was started in, whose own place is not told.
func SARIF(w io.Writer, d *Document) error {
	s := sarif{ruleIndex: map[*lint.Rule]int{}}
	run := &s.run
	run.Tool.Driver = sarifDriver{Name: "Wickrule", Version: d.Version, Rules: []sarifRule{},
		Notifications: []sarifDescriptor{
			{ID: uncheckedID, Short: sarifText{Text: "What could not be checked, for want of a figure."}},
			{ID: faultID, Short: sarifText{Text: "A check that stopped; the others went on."}},
			{ID: unreadID, Short: sarifText{Text: "What could not be read."}},
		}}
	run.ColumnKind = "unicodeCodePoints"
	run.Bases = map[string]sarifBase{startFolder: {Description: sarifText{Text: "The folder the check was started in."}}}
	run.Results = []sarifResult{}
	run.Invocations = []sarifInvocation{{Successful: d.Complete(), Executed: []sarifNotification{}, Configured: []sarifNotification{}}}
	for _, shop := range d.Shops {
		s.shop(shop)
	}
	for _, u := range d.Unread {
		run.Invocations[0].Configured = append(run.Invocations[0].Configured, sarifNotification{
			Descriptor: sarifReference{ID: unreadID}, Level: "error", Message: escaped(Located(u.Shop, u.Name) + ": " + u.Err.Error())})
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0", Runs: []sarifRun{s.run},
	})
}

const (
	startFolder = "STARTFOLDER"
	printName   = "wickruleFinding/v1"
	uncheckedID = "could-not-check"
	faultID     = "check-stopped"
	unreadID    = "not-read"
)

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool struct {
		Driver sarifDriver `json:"driver"`
	} `json:"tool"`
	Invocations []sarifInvocation    `json:"invocations"`
	Bases       map[string]sarifBase `json:"originalUriBaseIds"`
	ColumnKind  string               `json:"columnKind"`
	Results     []sarifResult        `json:"results"`
}

type sarifDriver struct {
	Name          string            `json:"name"`
	Version       string            `json:"version,omitempty"`
	Rules         []sarifRule       `json:"rules"`
	Notifications []sarifDescriptor `json:"notifications"`
}

type sarifRule struct {
	ID      string         `json:"id"`
	Short   sarifText      `json:"shortDescription"`
	Full    *sarifText     `json:"fullDescription,omitempty"`
	Help    sarifText      `json:"help"`
	Usually sarifLevel     `json:"defaultConfiguration"`
	More    map[string]any `json:"properties"`
}

type sarifDescriptor struct {
	ID    string    `json:"id"`
	Short sarifText `json:"shortDescription"`
}

type sarifLevel struct {
	Level string `json:"level"`
}

type sarifText struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown,omitempty"`
}

type sarifBase struct {
	Description sarifText `json:"description"`
}

type sarifResult struct {
	RuleID       string             `json:"ruleId"`
	RuleIndex    int                `json:"ruleIndex"`
	Level        string             `json:"level"`
	Message      sarifText          `json:"message"`
	Locations    []sarifLocation    `json:"locations"`
	Related      []sarifLocation    `json:"relatedLocations,omitempty"`
	Prints       map[string]string  `json:"partialFingerprints"`
	Fixes        []sarifFix         `json:"fixes,omitempty"`
	Suppressions []sarifSuppression `json:"suppressions,omitempty"`
}

type sarifLocation struct {
	ID       int            `json:"id,omitempty"`
	Physical sarifPhysical  `json:"physicalLocation"`
	Logical  []sarifLogical `json:"logicalLocations,omitempty"`
	Message  *sarifText     `json:"message,omitempty"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   sarifRegion   `json:"region"`
}

type sarifArtifact struct {
	URI  string `json:"uri"`
	Base string `json:"uriBaseId,omitempty"`
}

type sarifRegion struct {
	StartLine   int            `json:"startLine"`
	StartColumn int            `json:"startColumn"`
	EndLine     int            `json:"endLine"`
	EndColumn   int            `json:"endColumn"`
	Snippet     *sarifInserted `json:"snippet,omitempty"`
}

type sarifLogical struct {
	Name string `json:"fullyQualifiedName"`
	Kind string `json:"kind"`
}

type sarifFix struct {
	Description sarifText     `json:"description"`
	Changes     []sarifChange `json:"artifactChanges"`
}

type sarifChange struct {
	Artifact     sarifArtifact      `json:"artifactLocation"`
	Replacements []sarifReplacement `json:"replacements"`
}

type sarifReplacement struct {
	Deleted  sarifRegion   `json:"deletedRegion"`
	Inserted sarifInserted `json:"insertedContent"`
}

type sarifInserted struct {
	Text string `json:"text"`
}

type sarifSuppression struct {
	Kind          string        `json:"kind"`
	Status        string        `json:"status"`
	Justification string        `json:"justification"`
	Location      sarifLocation `json:"location"`
}

type sarifInvocation struct {
	Successful bool                `json:"executionSuccessful"`
	Executed   []sarifNotification `json:"toolExecutionNotifications"`
	Configured []sarifNotification `json:"toolConfigurationNotifications"`
}

type sarifNotification struct {
	Descriptor sarifReference  `json:"descriptor"`
	Rule       *sarifReference `json:"associatedRule,omitempty"`
	Level      string          `json:"level"`
	Message    sarifText       `json:"message"`
	Locations  []sarifLocation `json:"locations,omitempty"`
}

type sarifReference struct {
	ID string `json:"id"`
}

// sarif puts one run together.
type sarif struct {
	run       sarifRun
	ruleIndex map[*lint.Rule]int
}

func (s *sarif) shop(r *lint.Report) {
	root := r.Shop.Root
	for i, print := range lint.Prints(r.Findings) {
		s.run.Results = append(s.run.Results, s.result(root, &r.Findings[i], print))
	}
	conceded := make([]lint.Found, len(r.Conceded))
	for i := range r.Conceded {
		conceded[i] = r.Conceded[i].Found
	}
	for i, print := range lint.Prints(conceded) {
		result := s.result(root, &conceded[i], print)
		c := r.Conceded[i].Concession
		result.Suppressions = []sarifSuppression{{Kind: "inSource", Status: "accepted",
			Justification: c.Get("reason").Text(), Location: located(root, lint.AtHeader(c))}}
		s.run.Results = append(s.run.Results, result)
	}
	notes := &s.run.Invocations[0].Executed
	for _, u := range r.Unchecked {
		*notes = append(*notes, sarifNotification{Descriptor: sarifReference{ID: uncheckedID}, Level: sarifLevelOf(u.Level),
			Message: escaped(u.Message), Locations: []sarifLocation{located(root, u.At)}})
	}
	for _, f := range r.Faults {
		n := sarifNotification{Descriptor: sarifReference{ID: faultID}, Level: "error",
			Message: escaped("the check " + f.Rule + " stopped, the others went on: " + f.Reason)}
		if f.At.File != nil {
			n.Locations = []sarifLocation{located(root, f.At)}
		}
		*notes = append(*notes, n)
	}
}

func (s *sarif) result(root string, f *lint.Found, print string) sarifResult {
	out := sarifResult{
		RuleID: f.Rule.Name, RuleIndex: s.rule(f.Rule), Level: sarifLevelOf(f.Level), Message: escaped(f.Message),
		Locations: []sarifLocation{located(root, f.At)}, Prints: map[string]string{printName: print},
	}
	if f.Recipe != nil {
		out.Locations[0].Logical = []sarifLogical{{Name: "recipe " + f.Recipe.Label, Kind: "object"}}
	}
	for i, n := range f.Notes {
		l := located(root, n.Place)
		message := escaped(n.Message)
		l.ID, l.Message = i+1, &message
		out.Related = append(out.Related, l)
	}
	for _, fix := range f.Repairs() {
		out.Fixes = append(out.Fixes, sarifFix{Description: escaped(fix.Title), Changes: changes(root, fix)})
	}
	return out
}

// changes are the edits of a fix, by file.
func changes(root string, fix schema.Fix) (list []sarifChange) {
	at := map[*schema.File]int{}
	for _, e := range fix.Edits {
		if _, has := at[e.File]; !has {
			at[e.File] = len(list)
			list = append(list, sarifChange{Artifact: artifact(root, e.File.Name)})
		}
		c := &list[at[e.File]]
		c.Replacements = append(c.Replacements, sarifReplacement{region(lint.Place{File: e.File, Span: e.Span}), sarifInserted{e.Text}})
	}
	return list
}

// rule is the place of a rule among those that speak.
func (s *sarif) rule(r *lint.Rule) int {
	if i, has := s.ruleIndex[r]; has {
		return i
	}
	rules := &s.run.Tool.Driver.Rules
	s.ruleIndex[r] = len(*rules)
	one := sarifRule{ID: r.Name, Short: sarifText{Text: schema.Capital(r.Title) + "."}, Help: help(r),
		Usually: sarifLevel{sarifLevelOf(r.Levels.Sale)}, More: map[string]any{"group": r.Group, "loudness": r.Loudness(), "source": r.Source}}
	if one.Short.Text == "." {
		one.Short.Text = r.Name
	}
	if r.Why != "" {
		one.Full = &sarifText{Text: r.Why}
	}
	*rules = append(*rules, one)
	return s.ruleIndex[r]
}

// help is why a rule speaks and what to do.
func help(r *lint.Rule) sarifText {
	var plain, marked []string
	for _, part := range [][2]string{{"Why", r.Why}, {"To put it right", r.Remedy}, {"Mind", r.Cautions}, {"Source", r.Source}} {
		if part[1] != "" {
			plain = append(plain, part[0]+": "+part[1])
			marked = append(marked, "**"+part[0]+":** "+escapeMarkdown(part[1]))
		}
	}
	plain, marked = append(plain, Caution), append(marked, escapeMarkdown(Caution))
	return sarifText{Text: strings.Join(plain, "\n\n"), Markdown: strings.Join(marked, "\n\n")}
}

func sarifLevelOf(l lint.Level) string {
	switch l {
	case lint.Must:
		return "error"
	case lint.Should:
		return "warning"
	case lint.Consider:
		return "note"
	}
	return "none"
}

// escaped is a message as text: the standard reads braces as places to be
// filled in, and brackets before a number in parentheses as a link (3.11.5 and
// 3.11.6).
func escaped(text string) sarifText {
	text = strings.NewReplacer("{", "{{", "}", "}}", `\`, `\\`, "[", `\[`, "]", `\]`).Replace(Clean(text))
	return sarifText{Text: text}
}

func located(root string, at lint.Place) sarifLocation {
	r := region(at)
	if text := at.File.Text.Slice(at.Span); text != "" {
		r.Snippet = &sarifInserted{strings.ToValidUTF8(text, "�")}
	}
	return sarifLocation{Physical: sarifPhysical{artifact(root, at.File.Name), r}}
}

func region(at lint.Place) sarifRegion {
	startLine, startColumn := at.File.Text.Position(at.Span.Start)
	endLine, endColumn := at.File.Text.Position(at.Span.End)
	return sarifRegion{StartLine: startLine, StartColumn: startColumn, EndLine: endLine, EndColumn: endColumn}
}

// artifact names a file from the folder the check was started in. What does
// not lie below that is named by its whole path.
func artifact(root, name string) sarifArtifact {
	full := path.Join(root, name)
	switch {
	case path.IsAbs(full):
		return sarifArtifact{URI: "file://" + percent(full)}
	case len(full) > 2 && full[1] == ':' && full[2] == '/':
		return sarifArtifact{URI: "file:///" + percent(full)}
	}
	return sarifArtifact{URI: percent(full), Base: startFolder}
}

// percent is a path as a URI spells it: RFC 3986 leaves these signs as they are.
func percent(name string) string {
	var b strings.Builder
	for i := range len(name) {
		switch c := name[i]; {
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', '0' <= c && c <= '9', strings.IndexByte("-._~/", c) >= 0:
			b.WriteByte(c)
		default:
			fmt.Fprintf(&b, "%%%02X", c)
		}
	}
	return b.String()
}
