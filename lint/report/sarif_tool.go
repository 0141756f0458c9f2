package report

import (
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

type sarifDriver struct {
	Name             string            `json:"name"`
	FullName         string            `json:"fullName"`
	Version          string            `json:"version,omitempty"`
	ShortDescription sarifText         `json:"shortDescription"`
	Language         string            `json:"language"`
	Notifications    []sarifDescriptor `json:"notifications"`
	Rules            []sarifDescriptor `json:"rules"`
}

type sarifDescriptor struct {
	ID                   string              `json:"id"`
	ShortDescription     sarifText           `json:"shortDescription"`
	FullDescription      *sarifText          `json:"fullDescription,omitempty"`
	DefaultConfiguration *sarifConfiguration `json:"defaultConfiguration,omitempty"`
	Help                 *sarifHelp          `json:"help,omitempty"`
	Properties           *sarifTags          `json:"properties,omitempty"`
}

type sarifConfiguration struct {
	Level string `json:"level"`
}

type sarifHelp struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown"`
}

type sarifTags struct {
	Tags []string `json:"tags"`
}

// What a run tells besides its results, in the order of the driver's list.
var (
	noticeUnchecked = sarifReference{"cannot-check", 0}
	noticeUnread    = sarifReference{"cannot-read", 1}
	noticeFault     = sarifReference{"fault", 2}
	noticeLeftOut   = sarifReference{"left-out", 3}
)

// driver describes wickrule and the rules that the run mentions.
func (s *sarif) driver() sarifDriver {
	d := sarifDriver{
		Name:             "Wickrule",
		FullName:         "Wickrule, which checks candle recipes",
		Version:          s.origin.Version,
		ShortDescription: sarifText{"Reads candle recipes and says where they would go wrong before anything is melted."},
		Language:         "en",
		Notifications: []sarifDescriptor{
			{ID: noticeUnchecked.ID, ShortDescription: sarifText{"A figure is not stated, and rules wait for it"}},
			{ID: noticeUnread.ID, ShortDescription: sarifText{"A file or a folder could not be read"}},
			{ID: noticeFault.ID, ShortDescription: sarifText{"A check stopped by a fault of its own, the others went on"}},
			{ID: noticeLeftOut.ID, ShortDescription: sarifText{"How much was found that is not among the results, and why"}},
		},
		Rules: []sarifDescriptor{},
	}
	for _, r := range s.rules {
		d.Rules = append(d.Rules, describe(r))
	}
	return d
}

// index is the rule's place among those mentioned. Rules of two shops may have
// one name: they are told apart by their place.
func (s *sarif) index(r *lint.Rule) int {
	if i := slices.Index(s.rules, r); i >= 0 {
		return i
	}
	s.rules = append(s.rules, r)
	return len(s.rules) - 1
}

func describe(r *lint.Rule) sarifDescriptor {
	d := sarifDescriptor{
		ID:                   r.Name,
		ShortDescription:     sarifMessage(schema.Capital(r.Title)),
		DefaultConfiguration: &sarifConfiguration{sarifLevel(r.Levels.Sale)},
		Help:                 helpFor(r),
	}
	if r.Why != "" {
		why := sarifMessage(r.Why)
		d.FullDescription = &why
	}
	if r.Group != "" {
		d.Properties = &sarifTags{[]string{r.Group}}
	}
	return d
}

// helpFor is what explain says of a rule in words, without its title and its
// examples; as plain text and as Markdown.
func helpFor(r *lint.Rule) *sarifHelp {
	var text, markdown strings.Builder
	for _, part := range [...]struct{ heading, words string }{
		{"How loud", schema.Capital(r.Loudness()) + "."},
		{"Why", r.Why},
		{"To put it right", r.Remedy},
		{"With care", r.Cautions},
		{"Source", r.Source},
	} {
		if part.words == "" {
			continue
		}
		words := strings.Join(strings.Fields(part.words), " ")
		text.WriteString(part.heading + ": " + sarifMessage(words).Text + "\n\n")
		markdown.WriteString("**" + part.heading + "**\n\n" + sarifMessage(escapeMarkdown(words)).Text + "\n\n")
	}
	return &sarifHelp{strings.TrimSpace(text.String()), strings.TrimSpace(markdown.String())}
}

// notifications are what stood in the way of a full check. What is not stated
// is as loud as the rules that wait for it; the others are errors.
func (s *sarif) notifications(d *Document) []sarifNotification {
	list := []sarifNotification{}
	for _, shop := range d.Shops {
		s.root = shop.Shop.Root
		for _, u := range shop.Unchecked {
			list = append(list, sarifNotification{
				Descriptor: noticeUnchecked,
				Level:      sarifLevel(u.Level),
				Message:    sarifMessage(u.Message),
				Locations:  []sarifLocation{s.location(u.At)},
				Properties: &sarifWhatIsNeeded{u.Needs, u.Rules},
			})
		}
		for _, f := range shop.Faults {
			n := sarifNotification{Descriptor: noticeFault, Level: "error", Message: sarifMessage(faultText(f))}
			if f.At.File != nil {
				n.Locations = []sarifLocation{s.location(f.At)}
			}
			list = append(list, n)
		}
	}
	for _, u := range d.Unread {
		s.root = u.Shop
		list = append(list, sarifNotification{
			Descriptor: noticeUnread,
			Level:      "error",
			Message:    sarifMessage(Located(u.Shop, u.Name) + ": " + u.Err.Error()),
			Locations:  []sarifLocation{{PhysicalLocation: sarifPlace{ArtifactLocation: s.file(u.Name)}}},
		})
	}
	for _, left := range d.LeftOut {
		list = append(list, sarifNotification{Descriptor: noticeLeftOut, Level: "note", Message: sarifMessage(left)})
	}
	return list
}
