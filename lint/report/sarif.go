package report

import (
	"encoding/json"
	"io"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// The form is that of the OASIS Standard "Static Analysis Results Interchange
// Format (SARIF) Version 2.1.0 Plus Errata 01"; section numbers are its own.

const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// baseID stands for the folder that addresses are relative to.
const baseID = "RECIPES"

// printID names the partial fingerprint, with the version of what it is made of.
const printID = "wickrulePrint/v1"

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool               sarifTool            `json:"tool"`
	Invocations        []sarifInvocation    `json:"invocations"`
	Language           string               `json:"language"`
	OriginalURIBaseIDs map[string]sarifFile `json:"originalUriBaseIds"`
	DefaultEncoding    string               `json:"defaultEncoding"`
	NewlineSequences   []string             `json:"newlineSequences"`
	ColumnKind         string               `json:"columnKind"`
	Results            []sarifResult        `json:"results"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifInvocation struct {
	ExecutionSuccessful        bool                `json:"executionSuccessful"`
	ToolExecutionNotifications []sarifNotification `json:"toolExecutionNotifications"`
}

type sarifNotification struct {
	Descriptor sarifReference     `json:"descriptor"`
	Level      string             `json:"level"`
	Message    sarifText          `json:"message"`
	Locations  []sarifLocation    `json:"locations,omitempty"`
	Properties *sarifWhatIsNeeded `json:"properties,omitempty"`
}

type sarifReference struct {
	ID    string `json:"id"`
	Index int    `json:"index"`
}

type sarifWhatIsNeeded struct {
	Needs string   `json:"needs"`
	Rules []string `json:"rules"`
}

type sarifText struct {
	Text string `json:"text"`
}

type sarifResult struct {
	RuleID              string             `json:"ruleId"`
	RuleIndex           int                `json:"ruleIndex"`
	Level               string             `json:"level"`
	Message             sarifText          `json:"message"`
	Locations           []sarifLocation    `json:"locations"`
	RelatedLocations    []sarifLocation    `json:"relatedLocations,omitempty"`
	PartialFingerprints map[string]string  `json:"partialFingerprints"`
	Suppressions        []sarifSuppression `json:"suppressions,omitempty"`
	Fixes               []sarifFix         `json:"fixes,omitempty"`
	Properties          *sarifStanding     `json:"properties,omitempty"`
}

// sarifStanding tells why a result does not fail the check.
type sarifStanding struct {
	LeftOut string `json:"leftOut"`
}

type sarifLocation struct {
	PhysicalLocation sarifPlace     `json:"physicalLocation"`
	LogicalLocations []sarifLogical `json:"logicalLocations,omitempty"`
	Message          *sarifText     `json:"message,omitempty"`
}

type sarifPlace struct {
	ArtifactLocation sarifFile    `json:"artifactLocation"`
	Region           *sarifRegion `json:"region,omitempty"`
}

type sarifFile struct {
	URI         string     `json:"uri,omitempty"`
	URIBaseID   string     `json:"uriBaseId,omitempty"`
	Description *sarifText `json:"description,omitempty"`
}

type sarifRegion struct {
	StartLine   int        `json:"startLine"`
	StartColumn int        `json:"startColumn"`
	EndLine     int        `json:"endLine"`
	EndColumn   int        `json:"endColumn"` // the column behind the last one, 3.30.8
	Snippet     *sarifText `json:"snippet,omitempty"`
}

type sarifLogical struct {
	Name               string `json:"name"`
	FullyQualifiedName string `json:"fullyQualifiedName"`
	Kind               string `json:"kind"`
}

type sarifSuppression struct {
	Kind          string            `json:"kind"`
	Status        string            `json:"status"`
	Justification string            `json:"justification"`
	Location      *sarifLocation    `json:"location,omitempty"`
	Properties    map[string]string `json:"properties,omitempty"`
}

type sarifFix struct {
	Description     sarifText      `json:"description"`
	ArtifactChanges []sarifChange  `json:"artifactChanges"`
	Properties      sarifFixIsSafe `json:"properties"`
}

// sarifFixIsSafe tells whether what is made stays the same.
type sarifFixIsSafe struct {
	Safe bool `json:"safe"`
}

type sarifChange struct {
	ArtifactLocation sarifFile          `json:"artifactLocation"`
	Replacements     []sarifReplacement `json:"replacements"`
}

type sarifReplacement struct {
	DeletedRegion   sarifRegion `json:"deletedRegion"`
	InsertedContent *sarifText  `json:"insertedContent,omitempty"`
}

// SARIF writes the document in the standard's form, one run for all shops.
// What could not be checked is among the run's notifications, what is conceded
// among its results, suppressed with the reason that was given. What was left
// out and must be put right is a result like any other: nobody has decided that
// it is all right.
func SARIF(w io.Writer, d *Document) error {
	s := sarif{origin: d.Origin}
	run := sarifRun{
		Language:           "en",
		OriginalURIBaseIDs: map[string]sarifFile{baseID: d.Origin.base()},
		DefaultEncoding:    "utf-8",
		NewlineSequences:   []string{"\r\n", "\n", "\r"},
		ColumnKind:         "unicodeCodePoints",
		Results:            []sarifResult{},
	}
	for _, shop := range d.Shops {
		s.root = shop.Shop.Root
		prints := d.printsOf(shop)
		for i := range shop.Findings {
			run.Results = append(run.Results, s.result(&shop.Findings[i], prints[i]))
		}
		for _, standing := range d.standingIn(shop) {
			result := s.result(&standing.Found, standing.Print)
			result.Properties = &sarifStanding{Clean(standing.Why)}
			run.Results = append(run.Results, result)
		}
		prints = lint.Prints(lint.FoundIn(shop.Conceded))
		for i := range shop.Conceded {
			run.Results = append(run.Results, s.conceded(&shop.Conceded[i], prints[i]))
		}
	}
	run.Invocations = []sarifInvocation{{d.Complete(), s.notifications(d)}}
	run.Tool.Driver = s.driver()
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(sarifLog{sarifSchema, "2.1.0", []sarifRun{run}})
}

// base is the folder that addresses are relative to. Where nobody says which
// it is, only what it is (3.14.14).
func (o Origin) base() sarifFile {
	f := sarifFile{Description: &sarifText{"The top of the repository, or the folder that was checked from."}}
	if o.Base != "" {
		f.URI = strings.TrimSuffix(fileURI(o.Base), "/") + "/"
	}
	return f
}

// sarif writes what belongs to one shop after the other, and collects the
// rules that are mentioned.
type sarif struct {
	origin Origin
	root   string
	rules  []*lint.Rule
}

// sarifLevel is the level of a result (3.27.10).
func sarifLevel(l lint.Level) string {
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

// sarifMessage is a text as a message string: braces stand doubled, since
// single ones hold places for arguments (3.11.5), and nothing in it is taken
// for a link (3.11.6).
func sarifMessage(text string) sarifText {
	return sarifText{strings.NewReplacer("{", "{{", "}", "}}", "](", "] (").Replace(Clean(text))}
}

func (s *sarif) result(f *lint.Found, print string) sarifResult {
	r := sarifResult{
		RuleID:              f.Rule.Name,
		RuleIndex:           s.index(f.Rule),
		Level:               sarifLevel(f.Level),
		Message:             sarifMessage(f.Message),
		Locations:           []sarifLocation{s.location(f.At)},
		PartialFingerprints: map[string]string{printID: print},
	}
	if recipe := recipeOf(f); recipe != nil && recipe.File == f.At.File && recipe.Span.Contains(f.At.Span) {
		r.Locations[0].LogicalLocations = []sarifLogical{{recipe.Title(), recipe.Label, "recipe"}}
	}
	for _, n := range f.Notes {
		at := s.location(n.Place)
		message := sarifMessage(n.Message)
		at.Message = &message
		r.RelatedLocations = append(r.RelatedLocations, at)
	}
	for _, fix := range f.Repairs() {
		r.Fixes = append(r.Fixes, s.fix(fix))
	}
	return r
}

func (s *sarif) conceded(c *lint.Conceded, print string) sarifResult {
	r := s.result(&c.Found, print)
	at := s.location(lint.AtHeader(c.Concession))
	suppression := sarifSuppression{Kind: "inSource", Status: "accepted", Justification: Clean(c.Concession.Get("reason").Text()), Location: &at}
	if until := c.Concession.Get("until"); until.Known() {
		suppression.Properties = map[string]string{"until": until.Text()}
	}
	r.Suppressions = []sarifSuppression{suppression}
	return r
}

func (s *sarif) file(name string) sarifFile {
	address, relative := s.origin.uri(s.root, name)
	if relative {
		return sarifFile{URI: address, URIBaseID: baseID}
	}
	return sarifFile{URI: address}
}

func (s *sarif) location(at lint.Place) sarifLocation {
	region := regionOf(at.File, at.Span)
	if region.EndLine == region.StartLine { // a whole block would be shown twice
		region.Snippet = &sarifText{at.File.Text.Slice(at.Span)}
	}
	return sarifLocation{PhysicalLocation: sarifPlace{s.file(at.File.Name), &region}}
}

func regionOf(f *schema.File, span schema.Span) sarifRegion {
	var r sarifRegion
	r.StartLine, r.StartColumn = f.Text.Position(span.Start)
	r.EndLine, r.EndColumn = f.Text.Position(span.End)
	return r
}

// fix is a repair as mend makes it, laid out like the text around it. An
// insertion replaces an empty region.
func (s *sarif) fix(fix schema.Fix) sarifFix {
	out := sarifFix{Description: sarifMessage(fix.Title), Properties: sarifFixIsSafe{fix.Safe}}
	byFile := map[*schema.File][]schema.Edit{}
	var files []*schema.File
	for _, e := range fix.Edits {
		if byFile[e.File] == nil {
			files = append(files, e.File)
		}
		byFile[e.File] = append(byFile[e.File], e)
	}
	for _, f := range files {
		change := sarifChange{ArtifactLocation: s.file(f.Name)}
		edits := schema.Laid(f, byFile[f])
		slices.SortStableFunc(edits, func(a, b schema.Edit) int { return int(a.Span.Start - b.Span.Start) })
		for _, e := range edits {
			r := sarifReplacement{DeletedRegion: regionOf(f, e.Span)}
			if e.Text != "" {
				r.InsertedContent = &sarifText{e.Text}
			}
			change.Replacements = append(change.Replacements, r)
		}
		out.ArtifactChanges = append(out.ArtifactChanges, change)
	}
	return out
}
