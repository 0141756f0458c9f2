package lsp

import (
	"io/fs"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// itemsFit says whether the items at a place may be taken: each edit lies on one
// line, inside the text, around the cursor, and the labels differ.
func itemsFit(t testing.TB, h *here, at int32, items []completionItem) {
	t.Helper()
	size := int32(h.text.Len())
	for _, item := range items {
		edit := item.TextEdit.(protocol.TextEdit)
		span := h.span(edit.Range)
		good := span.Start <= at && at <= span.End && span.End <= size && edit.Range.Start.Line == edit.Range.End.Line && h.rangeOf(span) == edit.Range
		if !good {
			require.Fail(t, "an edit is out of place", "%s at %d: %v %q", h.file.Name, at, span, edit.NewText)
		}
	}
}

// stride is how far a sweep goes at a time: further in a short test.
func stride(usual, short int32) int32 {
	if testing.Short() {
		return short
	}
	return usual
}

func exampleTexts(t testing.TB) map[string]string {
	texts := map[string]string{}
	for _, fsys := range []fs.FS{examples.Shop(), examples.Faulty()} {
		require.NoError(t, fs.WalkDir(fsys, ".", func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(name, ".candle.hcl") {
				return err
			}
			data, err := fs.ReadFile(fsys, name)
			texts[name] = string(data)
			return err
		}))
	}
	return texts
}

func TestCompletionAtEveryByte(t *testing.T) {
	for name, text := range exampleTexts(t) {
		h := lookingAt(t, able, name, text)
		for at := int32(0); at <= int32(len(text)); at += stride(1, 7) {
			itemsFit(t, h, at, h.completion(at).Items)
		}
	}
}

// Half-typed text: every beginning of a file, as it is typed from the top; and
// the whole file with one line broken off at every place.
func TestCompletionInHalfTypedText(t *testing.T) {
	shop := exampleShop()
	for _, name := range []string{"recipes/tide-pillar.candle.hcl", "recipes/harbor-jar.candle.hcl", "stock/labels.candle.hcl", "shop.candle.hcl"} {
		text := shop.File(name).Text.String()
		text = text[:min(len(text), 1200)]
		for at := 0; at <= len(text); at += int(stride(1, 5)) {
			h := lookingAt(t, able, name, text[:at])
			itemsFit(t, h, int32(at), h.completion(int32(at)).Items)
		}
		for at := 0; at < len(text); at += int(stride(5, 23)) {
			end := strings.IndexByte(text[at:], '\n')
			if end <= 0 {
				continue
			}
			h := lookingAt(t, able, name, text[:at]+text[at+end:])
			itemsFit(t, h, int32(at), h.completion(int32(at)).Items)
		}
	}
}

// Every value and label with a closed list of answers is taken out of every
// recipe of the demo shop in four ways: between its quotes, with its end and
// its quote, with both quotes, and half typed. Whatever comes first must make
// the text whole again.
func TestFirstItemReadsClean(t *testing.T) {
	taken := 0
	for _, file := range exampleShop().Files() {
		name, text := file.Name, file.Text.String()
		for nth, span := range answered(file) {
			inside := text[span.Start+1 : span.End-1]
			half := inside[:len(inside)/2]
			if strings.ContainsAny(half, " ") {
				half = strings.SplitN(half, " ", 2)[0]
			}
			head, tail := text[:span.Start], text[span.End:]
			for i, broken := range []string{`"` + mark + `"`, `"` + half + mark, mark, `"` + half + mark + inside[len(half):] + `"`, `"` + mark} {
				if (i+nth)%int(stride(3, 8)) != 0 { // some of them, so that the test stays short
					continue
				}
				h, plain, items := completing(t, name, head+broken+tail)
				if len(items) == 0 {
					assert.Fail(t, "nothing is offered", "%s: %s for %s", name, broken, text[span.Start:span.End])
					continue
				}
				after := afterTaking(t, h, plain, items[0])
				read := schema.Read(name, []byte(after))
				if kind := file.Text.Slice(schema.Span{Start: max(0, span.Start-5), End: span.Start}); kind == "step " {
					// Another kind of step takes other attributes than those that stand.
					read.Problems = slices.DeleteFunc(read.Problems, func(p schema.Problem) bool {
						return p.Rule == "unknown-attribute" || p.Rule == "value-wrong-kind" || p.Rule == "unit-wrong-kind"
					})
				}
				if !assert.Empty(t, read.Problems, "%s: %q for %s gives %q: %v", name, broken, text[span.Start:span.End], after[span.Start-10:min(len(after), int(span.Start)+60)], problemTexts(read)) {
					return
				}
				taken++
			}
		}
	}
	t.Logf("%d texts made whole", taken)
	require.Greater(t, taken, 500)
}

func problemTexts(f *schema.File) (messages []string) {
	for _, p := range f.Problems {
		messages = append(messages, p.Message)
	}
	return messages
}

// answered are the places of the labels and values of a file for which there
// is a list of answers.
func answered(f *schema.File) (spans []schema.Span) {
	var walk func(*schema.Block)
	walk = func(b *schema.Block) {
		switch b.Spec.Label {
		case schema.Refers, schema.StepKind, schema.DateLabel, schema.RuleName:
			spans = append(spans, b.LabelSpan)
		}
		for v := range b.Attrs() {
			if !v.Known() {
				continue
			}
			switch v.Spec.Type {
			case schema.Choice, schema.Key, schema.Keys, schema.Choices, schema.Date:
				if v.Written()[0] == '"' {
					spans = append(spans, v.Span())
				}
			}
		}
		for _, inner := range b.Blocks() {
			walk(inner)
		}
	}
	for _, b := range f.Blocks {
		if !b.Is("rule") {
			walk(b)
		}
	}
	return spans
}

// What is offered is held against the rules, which are written apart from it:
// an item that is offered first as one that suits must not be flagged, and
// what is said to speak against an item must be flagged once it is taken.
func TestOffersAgreeWithTheRules(t *testing.T) {
	about := []string{"wick-outside-diameter", "wick-not-for-wax", "wick-tab-missing", "lead-core", "wax-not-for-container", "wax-not-for-mold", "seal-too-weak",
		"wick-hole-unsealed", "container-not-for-candles", "mold-softens", "pot-overfull", "caution-missing", "warning-label-missing", "label-not-for-market", "net-weight-overstated",
		"gel-needs-gel-safe", "water-in-wax", "fragrance-over-limit", "unknown-key"}
	all := rules.All()
	flagged := func(shop *lint.Shop, name string, about []string) (found []string) {
		for _, f := range lint.RunFile(shop, all, today, name).Findings {
			if slices.Contains(about, f.Rule.Name) {
				found = append(found, f.Rule.Name)
			}
		}
		return found
	}
	suiting, unsuiting, silent := 0, 0, 0
	for _, file := range exampleShop().Files() {
		if !strings.HasPrefix(file.Name, "recipes/") {
			continue
		}
		text := file.Text.String()
		for _, r := range slices.Collect(lint.References(file)) {
			span := r.At.Span
			marked := text[:span.Start+1] + mark + text[span.End-1:]
			h, plain, items := completing(t, file.Name, marked)
			about := about
			if place := r.At.File.Text.Slice(r.From.Header()); r.From.Span.Start < r.At.Span.Start && strings.HasSuffix(place, text[span.Start:span.End]) && len(r.Kinds) == 1 && slices.Contains([]string{"mold", "container", "taper"}, r.Kinds[0]) {
				// Steps and labels follow the vessel; they are not there to choose it by.
				about = slices.DeleteFunc(slices.Clone(about), func(name string) bool { return name == "wick-hole-unsealed" || name == "net-weight-overstated" })
			}
			for i, item := range items {
				after := afterTaking(t, h, plain, item)
				found := flagged(exampleShop().With(schema.Read(file.Name, []byte(after))), file.Name, about)
				why := whyOf(item)
				for_ := strings.HasPrefix(why, "burns ") || strings.HasPrefix(why, "suits ") || strings.HasPrefix(why, "holds to ") || strings.HasPrefix(why, "for ") && !strings.Contains(why, "and the recipe makes") || strings.HasPrefix(why, "holds ") && strings.Contains(why, "; the batch is")
				switch {
				case i == 0 && for_:
					assert.Empty(t, found, "%s: %s: %s is offered first: %s", file.Name, text[span.Start:span.End], item.Label, why)
					suiting++
				case for_ || why == "":
				case len(found) == 0:
					silent++
					t.Logf("%s: %s: nothing flags %s: %s", file.Name, text[span.Start:span.End], item.Label, why)
				default:
					unsuiting++
				}
			}
		}
	}
	require.Greater(t, suiting, 100)
	require.Greater(t, unsuiting, 5*silent, "a recipe may have conceded it, or be for one's own shelf; and seals of another sort are only listed last")
	t.Logf("%d suit and are not flagged; %d are said not to suit and are flagged, %d are not", suiting, unsuiting, silent)
}

// Each step is taken out of each recipe of the demo shop, and asked for again
// where it stood.
func TestTheStepThatIsNeeded(t *testing.T) {
	first, near, all := 0, 0, 0
	for _, recipe := range exampleShop().Recipes() {
		text := recipe.File.Text.String()
		kinds := map[string]int{}
		for step := range recipe.Each("step") {
			kinds[step.Spec.Kind]++
		}
		for step := range recipe.Each("step") {
			if kinds[step.Spec.Kind] > 1 {
				continue
			}
			_, _, items := completing(t, recipe.File.Name, text[:step.Span.Start]+"step \""+mark+"\""+text[step.Span.End:])
			all++
			at := slices.Index(labelsOf(items), step.Spec.Kind)
			require.GreaterOrEqual(t, at, 0)
			switch {
			case at == 0:
				first++
			case at < 4:
				near++
			default:
				t.Logf("%s: %s is number %d", recipe.Label, step.Spec.Kind, at+1)
			}
		}
	}
	require.Greater(t, first*100, all*85)
	require.Greater(t, (first+near)*100, all*97)
	t.Logf("of %d steps %d are offered first, %d among the first four", all, first, near)
}
