package handbook_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"io/fs"
	"net/url"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/handbook"
	"wickrule/rules/sheet"
)

// today is the day the examples are judged on.
const today = "2026-10-20"

func load(t testing.TB, fsys fs.FS) *lint.Shop {
	t.Helper()
	shop, errs := lint.Load(fsys, ".", nil)
	require.Empty(t, errs)
	return shop
}

// makeOf is the handbook of a shop, by the names of its files.
func makeOf(shop *lint.Shop) map[string]string {
	demo, _ := lint.Load(examples.Shop(), ".", nil)
	files, err := handbook.Make(handbook.Order{Shop: shop, Demo: demo, Rules: rules.For, Today: today})
	if err != nil {
		panic(err)
	}
	named := map[string]string{}
	for _, f := range files {
		if named[f.Name] != "" {
			panic("two files called " + f.Name)
		}
		named[f.Name] = string(f.Bytes)
	}
	return named
}

// books are the handbooks that every page test looks at.
var books = sync.OnceValue(func() map[string]map[string]string {
	load := func(fsys fs.FS) *lint.Shop {
		shop, _ := lint.Load(fsys, ".", nil)
		return shop
	}
	return map[string]map[string]string{
		"demo":  makeOf(load(examples.Shop())),
		"odd":   makeOf(load(oddShop())),
		"bare":  makeOf(load(fstest.MapFS{"x.candle.hcl": {Data: []byte("")}})),
		"wrong": makeOf(load(examples.Faulty())),
	}
})

// oddShop has keys, titles and texts that nobody should write and somebody
// will: beyond ASCII, in capitals, with signs of HTML, and very long.
func oddShop() fs.FS {
	long := strings.Repeat("sehr-", 60) + "lang"
	text := `shop "odd" {
  title = "<script>alert(1)</script> & \"Ölfleck\""
  tune "fragrance-near-limit" {
    level  = "off"
    reason = "<b>We</b> know"
  }
  tune "second-pour-missing" { level = "consider" }
  tune "heat-near-flash" { level = "off" }
  tune "Größe/..\\x" { level = "off" }
}
wax "Wachs-Ä" { title = "Wachs <i>Ä</i>" }
wax "wachs-ä" { title = "the other" }
wax "` + long + `" { title = "long" }
wax "../../etc" { title = "]]> -->" }
fragrance "duft" {
  component "<a href=x>" { share = "10 %" }
}
trial "versuch/1?#" {
  question = "Is <em>it</em> so?"
  tried    = "Wachs-Ä"
  notes    = "A & B"
}
`
	for _, name := range []string{"Größe/..\\x", "größe", "fragrance-over-limit", "CON", long, "a b"} {
		text += `rule "` + strings.ReplaceAll(name, `\`, `\\`) + `" {
  title    = "Rule <u>` + strings.ReplaceAll(name, `\`, `\\`) + `</u>"
  about    = "pour"
  require  = pour.at <= amount("180 °F")
  because  = "Hot <wax> & water."
  rests_on = ["versuch/1?#", "nowhere"]
  sound {
    recipe "gut" {
      step "pour" { at = "170 °F" }
    }
  }
  faulty {
    recipe "schlecht" {
      step "pour" { at = "190 °F" }
    }
  }
}
`
	}
	return fstest.MapFS{"shop.candle.hcl": {Data: []byte(text)}}
}

func eachPage(t *testing.T, look func(t *testing.T, book map[string]string, name string, page *html.Node)) {
	for which, book := range books() {
		for name, text := range book {
			if !strings.HasSuffix(name, ".html") {
				continue
			}
			page := parsed(t, text)
			t.Run(which+"/"+name, func(t *testing.T) { look(t, book, name, page) })
		}
	}
}

// parsed is a page as a browser without scripts sees it.
func parsed(t *testing.T, text string) *html.Node {
	t.Helper()
	page, err := html.ParseWithOptions(strings.NewReader(text), html.ParseOptionEnableScripting(false))
	require.NoError(t, err)
	return page
}

// elements are the elements below a node, in order.
func elements(n *html.Node) []*html.Node {
	var all []*html.Node
	for d := range n.Descendants() {
		if d.Type == html.ElementNode {
			all = append(all, d)
		}
	}
	return all
}

func attr(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func textOf(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		switch {
		case d.Type == html.TextNode:
			b.WriteString(d.Data)
		case !slices.Contains([]string{"a", "b", "span", "mark", "code", "strong"}, d.Data):
			b.WriteByte(' ') // what stands apart
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// Every page is well-formed XML, and a parser that follows the HTML Standard
// sees the very same elements: nothing was closed or moved by guessing.
func TestPagesAreWellFormed(t *testing.T) {
	eachPage(t, func(t *testing.T, book map[string]string, name string, page *html.Node) {
		var strict []string
		d := xml.NewDecoder(strings.NewReader(book[name]))
		for {
			token, err := d.Token()
			if err == io.EOF {
				break
			}
			require.NoError(t, err)
			if start, ok := token.(xml.StartElement); ok {
				attrs := map[string]bool{}
				for _, a := range start.Attr {
					require.Falsef(t, attrs[a.Name.Local], "an attribute twice: %v", start)
					attrs[a.Name.Local] = true
				}
				strict = append(strict, start.Name.Local)
			}
		}
		var lenient []string
		for _, e := range elements(page) {
			lenient = append(lenient, e.Data)
		}
		assert.Equal(t, strict, lenient)
	})
}

// Nothing is asked of anybody: each link leads to a file of the same folder,
// and to an anchor that is there.
func TestEveryLinkLeads(t *testing.T) {
	for which, book := range books() {
		ids := map[string]map[string]bool{}
		for name, text := range book {
			if strings.HasSuffix(name, ".html") {
				ids[name] = map[string]bool{}
				for _, e := range elements(parsed(t, text)) {
					if id := attr(e, "id"); id != "" {
						assert.Falsef(t, ids[name][id], "%s/%s: the id %s stands twice", which, name, id)
						ids[name][id] = true
					}
				}
			}
		}
		for name, text := range book {
			if !strings.HasSuffix(name, ".html") {
				continue
			}
			for _, e := range elements(parsed(t, text)) {
				for _, from := range []string{"href", "src", "action"} {
					to := attr(e, from)
					if to == "" {
						continue
					}
					u, err := url.Parse(to)
					if !assert.NoErrorf(t, err, "%s/%s", which, name) {
						continue
					}
					assert.Emptyf(t, u.Scheme+u.Host+u.RawQuery, "%s/%s leads out: %s", which, name, to)
					file := u.Path
					if file == "" {
						file = name
					}
					if assert.Containsf(t, book, file, "%s/%s: %s", which, name, to) && u.Fragment != "" {
						assert.Truef(t, ids[file][u.Fragment], "%s/%s: no anchor for %s", which, name, to)
					}
				}
				assert.Emptyf(t, attr(e, "style")+attr(e, "onclick")+attr(e, "srcset"), "%s/%s", which, name)
			}
		}
	}
}

// What is looked up leads to a page and an anchor too, and the scripts and the
// style sheet ask for nothing from elsewhere.
func TestScriptsAndStyleStayAtHome(t *testing.T) {
	for name, text := range books()["demo"] {
		if strings.HasSuffix(name, ".html") {
			continue
		}
		for _, way := range []string{"//" + "www", "http:", "https:", "url(", "@import", "fetch(", "XMLHttpRequest", "import(", "sendBeacon", "WebSocket", "eval(", "innerHTML"} {
			assert.NotContains(t, text, way, name)
		}
	}
}

// What the standard asks of a page that can be told from its text. WCAG 2.2:
// 1.3.1 and 2.4.6 headings and tables, 2.4.1 a way past what repeats, 2.4.2
// titles, 3.1.1 language, 3.3.2 labels, 4.1.2 names.
func TestPagesCanBeReadByAll(t *testing.T) {
	titles := map[string]map[string]string{}
	eachPage(t, func(t *testing.T, book map[string]string, name string, page *html.Node) {
		all := elements(page)
		ids := map[string]*html.Node{}
		count := map[string]int{}
		for _, e := range all {
			ids[attr(e, "id")] = e
			count[e.Data]++
		}
		assert.Equal(t, "html", all[0].Data)
		assert.Equal(t, "en", attr(all[0], "lang"))
		for _, once := range []string{"main", "title", "h1", "header", "footer"} {
			assert.Equalf(t, 1, count[once], "one %s", once)
		}
		level := 0
		first := true
		for _, e := range all {
			switch e.Data {
			case "title":
				assert.NotEmpty(t, textOf(e))
				key := book["index.html"]
				if titles[key] == nil {
					titles[key] = map[string]string{}
				}
				assert.Emptyf(t, titles[key][textOf(e)], "two pages are called %s", textOf(e))
				titles[key][textOf(e)] = name
			case "h1", "h2", "h3", "h4":
				n := int(e.Data[1] - '0')
				assert.LessOrEqualf(t, n, level+1, "a heading is left out before %s", textOf(e))
				assert.NotEmpty(t, textOf(e))
				level = n
			case "a":
				assert.NotEmptyf(t, textOf(e), "a link that says nothing: %s", attr(e, "href"))
				if first {
					assert.Equal(t, "skip", attr(e, "class"), "the first link skips what repeats")
					assert.Equal(t, "main", ids[strings.TrimPrefix(attr(e, "href"), "#")].Data)
					first = false
				}
			case "nav":
				assert.NotEmpty(t, attr(e, "aria-label"))
			case "table":
				heads := 0
				for _, c := range elements(e) {
					if c.Data == "th" {
						if attr(c, "scope") == "col" {
							assert.NotEmpty(t, textOf(c), "a column without a name")
						}
						heads++
						assert.Contains(t, []string{"row", "col"}, attr(c, "scope"))
					}
				}
				assert.NotZero(t, heads, "a table without headers")
			case "input":
				labeled := slices.ContainsFunc(all, func(l *html.Node) bool { return l.Data == "label" && attr(l, "for") == attr(e, "id") })
				assert.True(t, labeled, "a field without a label")
			}
			if by := attr(e, "aria-labelledby"); by != "" {
				assert.NotNil(t, ids[by], by)
			}
			if attr(e, "role") == "group" {
				assert.NotEmpty(t, attr(e, "aria-label")+attr(e, "aria-labelledby"))
				assert.Equal(t, "0", attr(e, "tabindex"), "what is scrolled sideways can be reached by key")
			}
		}
		for _, e := range all {
			if e.Data == "nav" && attr(e, "aria-label") == "Parts of the handbook" {
				assert.Equal(t, 1, strings.Count(render(t, e), "aria-current"))
			}
		}
	})
}

func render(t *testing.T, n *html.Node) string {
	var b bytes.Buffer
	require.NoError(t, html.Render(&b, n))
	return b.String()
}

// The usual cautions and the deferral stand on every page.
func TestEveryPageHasTheCautions(t *testing.T) {
	eachPage(t, func(t *testing.T, _ map[string]string, _ string, page *html.Node) {
		text := textOf(page)
		for _, said := range slices.Concat(sheet.Bench(), sheet.Burning(), []string{sheet.Deferral("handbook"), "never water"}) {
			assert.Contains(t, text, said)
		}
	})
}

// The same shop, rules and day give the same bytes.
func TestSameBytes(t *testing.T) {
	again := makeOf(load(t, examples.Shop()))
	assert.Equal(t, books()["demo"], again)
}
