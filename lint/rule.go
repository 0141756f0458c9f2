package lint

// Subject is what a rule's check is called for.
type Subject uint8

const (
	AboutRecipe Subject = iota // once for each recipe
	AboutFile                  // once for each file; Pass.Recipe is nil
	AboutFormat                // never: the reader, or the engine itself, finds it
)

// Rule is one thing the shop is checked for. It is a plain value: reports,
// explanations, the handbook and the rule's own tests all read these fields.
type Rule struct {
	Name     string // kebab-case words naming the defect
	Group    string // the handbook's heading: "Formulation", "Heat" …
	Title    string // one line, a sentence without a full stop: what it finds
	Why      string // in plain words: why it matters, what can happen
	Remedy   string // how to put it right
	Card     Card   // what a customer is told who asks; empty: made of the other fields
	Source   string // the published source, or "common practice", or what is "from memory"
	Cautions string // what to mind while putting it right; may be empty
	Levels   Levels // the loudest it usually speaks; a finding may carry its own
	Binding  bool   // for recipes made for sale, and all where it is about the format: neither conceded nor tuned below Levels
	About    Subject
	Bad      []Example // each is flagged by this rule
	Good     []Example // none is flagged by this rule
	Also     []string  // rules that the bad examples cannot help but break as well
	Check    func(*Pass)
}

// Card is what a customer is handed who asks about what a rule is for: somebody
// who burns candles or makes them, and does not know this program. Why it is so
// is the rule's own Why.
type Card struct {
	Question string // as people ask it
	Answer   string // the short answer
	AllRight string // when it is still all right
	Do       string // what to do
}

// Example is a recipe that shows a rule at work. It starts from a recipe of
// the example shop with changes made to it, or from a text of its own.
type Example struct {
	About   string   // what it shows, a few words
	Recipe  string   // key of the example shop's recipe it starts from
	Changes []Change // made to that recipe's file, in order
	Stock   string   // further blocks laid over the example shop in a file of their own
	Text    string   // where Recipe is empty: the whole file
	Shows   string   // where nothing is changed: a piece of the text that it is about, to be shown; "": what is like the first bad example
	Shelf   string   // kind and key of the example shop's item that it turns on, to be shown: "wick cored-zinc-34"
	Flags   []string // bad examples: the exact characters flagged, in order of place
	Level   Level    // bad examples: how loud (of the first); Silent: as Levels says for the recipe
}

// Change replaces From, which stands exactly once in the text, by To.
type Change struct{ From, To string }
