package explained

import (
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Trial is what there is to say of something that a shop tried.
type Trial struct {
	Key     string
	Date    string
	Outcome string // held, failed, mixed; "open" also where none is written; "" where it cannot be read
	Asked   string
	Tried   string // what, in what, up to what heat
	Noted   string
	Bears   []string // the rules that rest on it
}

// Open says whether the question is not answered yet.
func (t *Trial) Open() bool { return t.Outcome == open }

const open = "open"

// TrialOf tells of one trial.
func TrialOf(shop *lint.Shop, b *schema.Block) Trial {
	t := Trial{
		Key: b.Label, Date: b.Get("date").Text(), Outcome: b.Get("outcome").Text(),
		Asked: oneLine(b.Get("question").Text()), Noted: oneLine(b.Get("notes").Text()),
		Bears: restingOn(shop, b.Label),
	}
	if b.Get("outcome").Absent() {
		t.Outcome = open
	}
	var about []string
	if key := b.Get("tried"); key.Known() {
		about = append(about, titleOf(shop, key))
	}
	if key := b.Get("recipe"); key.Known() {
		about = append(about, "in "+titleOf(shop, key))
	}
	if upTo := b.Get("up_to"); upTo.IsAmount() {
		about = append(about, "up to "+upTo.Amount().String())
	}
	t.Tried = oneLine(strings.Join(about, ", "))
	return t
}

// Behind are the trials that a rule of the shop's own rests on, those that
// there are.
func Behind(shop *lint.Shop, rule *schema.Block) []Trial {
	var all []Trial
	for _, item := range rule.Get("rests_on").Items() {
		if t := shop.Find("trial", item.Text); t != nil {
			all = append(all, TrialOf(shop, t))
		}
	}
	return all
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// titleOf is the title of what a key leads to, else the key.
func titleOf(shop *lint.Shop, key schema.Value) string {
	if b := shop.Resolve(lint.Reference{Kinds: key.Spec.Refers, Key: key.Text()}); b != nil {
		return b.Title()
	}
	return key.Text()
}

// restingOn are the rules that name a trial.
func restingOn(shop *lint.Shop, trial string) []string {
	var all []string
	for _, rule := range shop.Rules() {
		if slices.ContainsFunc(rule.Get("rests_on").Items(), func(i schema.Item) bool { return i.Text == trial }) {
			all = append(all, rule.Label)
		}
	}
	return all
}
