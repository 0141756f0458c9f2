package shoprule

import (
	"fmt"

	"wickrule/lint"
	"wickrule/schema"
)

// Proof is what came of one rule's examples.
type Proof struct {
	Rule     *schema.Block
	Readable bool
	Sound    int // examples that it must pass
	Faulty   int // examples in which it must speak
	Examples []Example
}

// Untested says whether there is no sound example, or no faulty one.
func (p *Proof) Untested() bool { return p.Sound == 0 || p.Faulty == 0 }

// Holds says whether the rule is proved: it can be read, has examples of both
// kinds, and all came out as they must.
func (p *Proof) Holds() bool {
	if !p.Readable || p.Untested() {
		return false
	}
	for _, e := range p.Examples {
		if e.Says != "" {
			return false
		}
	}
	return true
}

// Verdict says in a few words whether the rule is proved.
func (p *Proof) Verdict() string {
	if p.Holds() {
		return fmt.Sprintf("proved by %d sound and %d faulty", p.Sound, p.Faulty)
	}
	return "not proved"
}

// Example is one sound or faulty block, and what came of it.
type Example struct {
	Block    *schema.Block
	Readable bool       // its text read clean, and where it did not come out all it names is there; where not, the format's own rules say so
	Recipes  []string   // what the rule says of each, where it came out as it must
	Says     string     // why it did not come out as it must; "" where it did
	At       lint.Place // what that is about
}

// exampleFile is the name under which an example is laid over the shop. It
// comes first in the order of names, so that what an example brings along
// counts before what the shop has under the same key.
const exampleFile = "!example" + lint.FileSuffix

// Prove runs a rule against its examples. Only this rule runs, as it is
// written: what a shop has for its options is no part of it, or two shops that
// share the rule could not both prove it.
func Prove(view *lint.View, rule *schema.Block) Proof {
	own := programs.In(view, written(rule))
	p := Proof{Rule: rule, Readable: own.runs()}
	for _, b := range rule.Blocks() {
		sound := b.Is("sound")
		switch {
		case sound:
			p.Sound++
		case b.Is("faulty"):
			p.Faulty++
		default:
			continue
		}
		if p.Readable {
			p.Examples = append(p.Examples, own.try(view, b, sound))
		}
	}
	return p
}

// Over lays a sound or faulty block over the shop, as it is proved, and gives
// the file that was made of it. What stands in that file at a place stands in
// the rule's file so many bytes further on as the block's Body starts.
func Over(shop *lint.Shop, example *schema.Block) (*lint.Shop, *schema.File) {
	file := fileOf(example)
	return shop.With(file), file
}

// fileOf is an example as a file that can be laid over the shop.
func fileOf(example *schema.Block) *schema.File {
	return schema.Read(exampleFile, []byte(example.File.Text.Slice(example.Body)))
}

// try runs the rule against one example.
func (p *program) try(view *lint.View, b *schema.Block, sound bool) Example {
	e := Example{Block: b, Readable: true, At: lint.AtHeader(b)}
	file := fileOf(b)
	if !file.Clean {
		e.Readable, e.Says = false, "this example cannot be read as it stands"
		return e
	}
	views := view.Laid(file)
	if len(views) == 0 {
		e.Says = "this example has no recipe, so it shows nothing"
		return e
	}
	asked := false
	for _, v := range views {
		o := p.outcome(v)
		asked = asked || o.held
		title := v.Recipe.Title()
		switch {
		case o.over:
			e.Says = fmt.Sprintf("%s has more combinations of blocks than are checked", title)
		case sound && o.spoke:
			e.Says = fmt.Sprintf("%s is meant to be sound, and the rule speaks of it: %s", title, o.message)
		case sound && o.unknown:
			e.Says = fmt.Sprintf("%s is meant to be sound, and the rule could not check it: %s", title, o.why)
		case !sound && !o.spoke && o.unknown:
			e.Says = fmt.Sprintf("%s is meant to be faulty, and the rule could not check it: %s", title, o.why)
		case !sound && !o.spoke && o.held:
			e.Says = fmt.Sprintf("%s is meant to be faulty, and the rule finds nothing wrong with it", title)
		case !sound && !o.spoke:
			e.Says = fmt.Sprintf("%s is meant to be faulty, and the rule does not apply to it: %s", title, p.idle())
		default:
			e.Recipes = append(e.Recipes, title+": "+o.said(p))
			continue
		}
		e.At = lint.Place{File: b.File, Span: moved(v.Recipe.Header(), b.Body.Start)}
		e.Readable = allNamed(v, file)
		return e
	}
	if sound && !asked {
		e.Says = "the rule was never checked on this sound example: " + p.idle()
	}
	return e
}

// allNamed says whether all that an example names is there. Where it is not,
// the format's own rules say so.
func allNamed(view *lint.View, example *schema.File) bool {
	for ref := range lint.References(example) {
		if !view.Leads(ref) {
			return false
		}
	}
	return true
}

// idle says why a rule may not have been checked.
func (p *program) idle() string {
	if p.when == nil {
		return "it needs " + p.named()
	}
	return "it needs " + p.named() + ", and its when must hold"
}

// said is what a rule says of a recipe, in words.
func (o *outcome) said(p *program) string {
	switch {
	case o.spoke:
		return o.message
	case o.held:
		return "checked, and nothing found"
	}
	return "not checked: " + p.idle()
}

// outcome is what a rule says of one recipe as a whole.
type outcome struct {
	held, spoke, unknown, over bool
	message                    string // of the first finding
	why                        string // the first thing that is not known
}

func (p *program) outcome(view *lint.View) (o outcome) {
	s := sceneOf.In(view)
	r, over := p.begin(s)
	if o.over = over; over {
		return o
	}
	for r.next() {
		switch verdict, v := p.judge(s); verdict {
		case holds:
			o.held = true
		case fails:
			if !o.spoke {
				o.spoke, o.message = true, p.finding(s).Message
			}
		case unknown:
			if !o.unknown {
				o.unknown, o.why = true, v.why()
			}
		}
	}
	return o
}

// why says what a value waits for.
func (v *value) why() string {
	switch {
	case v.byZero:
		return "it divides by nothing"
	case v.lacks != nil:
		return fmt.Sprintf("%s does not state %s", v.lacks.Title(), v.lacks.Spec.Attrs[v.attr].Name)
	case v.state == schema.Broken:
		return "a value that it rests on cannot be read, or is not there to be reckoned"
	}
	return "a figure that it rests on is not known"
}
