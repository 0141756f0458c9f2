package handbook_test

import (
	"encoding/json"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"
)

// browser is a headless browser that loads pages from a folder, scripts and
// all. The test is passed over where there is none.
type browser struct{ program, folder string }

func open(t *testing.T, book map[string]string) browser {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if program, err := exec.LookPath(name); err == nil {
			b := browser{program, t.TempDir()}
			for name, text := range book {
				require.NoError(t, os.WriteFile(filepath.Join(b.folder, name), []byte(text), 0o644))
			}
			return b
		}
	}
	t.Skip("no browser is installed here")
	return browser{}
}

// load is a page after its scripts have run.
func (b browser) load(t *testing.T, page string, flags ...string) *html.Node {
	t.Helper()
	flags = append(flags, "--headless", "--no-sandbox", "--disable-gpu", "--user-data-dir="+t.TempDir(),
		"--virtual-time-budget=20000", "--dump-dom", "file://"+filepath.ToSlash(b.folder)+"/"+page)
	command := exec.Command(b.program, flags...)
	command.WaitDelay = time.Second
	ends := time.AfterFunc(2*time.Minute, func() { command.Process.Kill() })
	defer ends.Stop()
	out, err := command.Output()
	require.NoError(t, err)
	tree, err := html.Parse(strings.NewReader(string(out)))
	require.NoError(t, err)
	return tree
}

func byID(tree *html.Node, id string) *html.Node {
	for _, e := range elements(tree) {
		if attr(e, "id") == id {
			return e
		}
	}
	return nil
}

// look is what the search says and finds of a question.
type look struct {
	State string
	Found []string // addresses
}

// ask types questions into the search, one after the other, and keeps what
// stands on the page after each.
const ask = `<script>
addEventListener("load", function () {
  var out = document.createElement("pre");
  out.id = "answers";
  var box = document.getElementById("question");
  out.textContent = JSON.stringify(QUESTIONS.map(function (q) {
    box.value = q;
    box.dispatchEvent(new Event("input"));
    return { State: document.getElementById("state").textContent,
      Found: Array.from(document.querySelectorAll("#found a"), function (a) { return a.getAttribute("href"); }) };
  }));
  document.body.append(out);
});
</script></body>`

// looks asks the search of a handbook in a real browser, from a folder.
func looks(t *testing.T, book map[string]string, questions []string) []look {
	t.Helper()
	list, err := json.Marshal(questions)
	require.NoError(t, err)
	asking := maps.Clone(book)
	asking["ask.html"] = strings.Replace(book["search.html"], "</body>", strings.Replace(ask, "QUESTIONS", string(list), 1), 1)
	tree := open(t, asking).load(t, "ask.html")
	require.Empty(t, attr(byID(tree, "ask"), "hidden"), "the form is shown where scripts run")
	var all []look
	require.NoError(t, json.Unmarshal([]byte(textOf(byID(tree, "answers"))), &all))
	require.Len(t, all, len(questions))
	return all
}

func TestSearchInABrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a browser")
	}
	cases := []struct{ asked, said, first, also string }{
		{"second pour", "things found.", "words.html#term-second-pour", "rule-second-pour-missing.html"},
		{"second-pour-missing", "found.", "rule-second-pour-missing.html", ""},
		{"northlight-pillar", "found.", "stock.html#wax-northlight-pillar", ""},
		{"fresh-putty-for-hot-pours", "found.", "own-fresh-putty-for-hot-pours.html", ""},
		{"fragrense", "No page says “fragrense”; taken for fragrance", "words.html#term-fragrance", "rule-fragrance-over-limit.html"},
		{"secnod puor", "No page says “secnod”; taken for second. No page says “puor”; taken for pour", "words.html#term-second-pour", "rule-second-pour-missing.html"},
		{"FLASH  point", "found.", "words.html#term-flash-point", "rule-heat-near-flash.html"},
		{"wick putty", "found.", "stock.html#seal-wick-putty", "trials.html#trial-putty-reuse"},
		{"wick hole", "things found.", "words.html#term-wick-hole", "rule-wick-hole-unsealed.html"},
		{"sinkhole", "things found.", "words.html#term-sinkhole", "rule-second-pour-missing.html"},
		{"hole in the middle of my candle", "found.", "words.html#term-sinkhole", ""},
		{"how hot", "things found.", "", "words.html#term-pour"},
		{"what temperature to pour", "things found.", "words.html#term-pour", "rule-temperature-never-said.html"},
		{"sticker", "things found.", "words.html#term-warning-label", "stock.html#seal-tab-sticker"},
		{"too much scent", "things found.", "words.html#term-fragrance-load", "rule-fragrance-over-limit.html"},
		{"why does my mold leak", "found.", "rule-wick-hole-unsealed.html", "words.html#term-wick-hole"},
		{"leaking", "found.", "words.html#term-wick-hole", "rule-wick-hole-unsealed.html"},
		{"glass cracked", "things found.", "words.html#term-thermal-shock", "rule-glass-too-cold-for-pour.html"},
		{"trim wick", "things found.", "words.html#term-trim", "rule-wick-untrimmed.html"},
		{"mushroming", "taken for mushrooming", "", "words.html#term-mushroom"},
		{"can I sell it", "things found.", "rule-test-burn-missing.html", "rule-warning-label-missing.html"},
		{"microwave", "things found.", "rule-open-heat.html", ""},
		{"sinkhole zzqx", "No page has all of these words.", "words.html#term-sinkhole", ""},
		{"100 °F", "found.", "", ""},
		{"zzqx", "Nothing found.", "nothing", ""},
		{"<b>&\"", "found.", "", ""},
		{"...", "Nothing found.", "nothing", ""},
		{"  ", "", "nothing", ""},
	}
	var questions []string
	for _, c := range cases {
		questions = append(questions, c.asked)
	}
	for i, got := range looks(t, books()["demo"], questions) {
		c := cases[i]
		assert.Containsf(t, got.State, c.said, "%q", c.asked)
		switch {
		case c.first == "nothing":
			assert.Emptyf(t, got.Found, "%q", c.asked)
		case c.first != "" && assert.NotEmptyf(t, got.Found, "%q", c.asked):
			assert.Equalf(t, c.first, got.Found[0], "%q", c.asked)
		}
		if c.also != "" {
			assert.Containsf(t, got.Found, c.also, "%q", c.asked)
		}
	}
}

// A question can stand in the address, as it does when the form is sent.
func TestSearchByAddress(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a browser")
	}
	tree := open(t, books()["demo"]).load(t, "search.html?q=second+pour")
	found := byID(tree, "found")
	assert.Contains(t, textOf(found), "Second pour word More wax of the same batch")
	assert.Contains(t, textOf(byID(tree, "state")), "things found.")
}

// Keys beyond ASCII are found, with their marks and without, and lead to
// their pages.
func TestSearchOfOddKeys(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a browser")
	}
	all := looks(t, books()["odd"], []string{"größe", "GROSSE", "wachs-a"})
	assert.Equal(t, "own-gr_c3_b6_c3_9fe.html", all[0].Found[0])
	assert.Contains(t, all[2].Found, "stock.html#wax-wachs-_c3_a4")
}

// reckon tells the page around it which text has too little contrast with its
// ground, by WCAG 2.2's formula and what the browser really shows, and whether
// the page is wider than the window.
const reckon = `<script>
addEventListener("load", function () {
  function rgb(c) { return c.match(/[\d.]+/g).map(Number); }
  function linear(c) { c /= 255; return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4); }
  function luminance(c) { return 0.2126 * linear(c[0]) + 0.7152 * linear(c[1]) + 0.0722 * linear(c[2]); }
  var wrong = [], seen = 0;
  var walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    var e = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || e.closest("script, noscript, [hidden]")) continue;
    var ground = e;
    while (ground && rgb(getComputedStyle(ground).backgroundColor)[3] === 0) ground = ground.parentElement;
    var a = luminance(rgb(getComputedStyle(e).color)), b = luminance(rgb(getComputedStyle(ground || document.documentElement).backgroundColor));
    var ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    seen++;
    if (ratio < 4.5) wrong.push(ratio.toFixed(2) + " " + e.className + " " + walk.currentNode.data.trim().slice(0, 40));
  }
  if (document.documentElement.scrollWidth > innerWidth) wrong.push("wider than the window");
  parent.postMessage({ page: location.pathname.split("/").pop(), dark: matchMedia("(prefers-color-scheme: dark)").matches, seen: seen, wrong: wrong }, "*");
});
</script></body>`

// around holds every page in a narrow frame and writes down what each tells.
const around = `<!DOCTYPE html><title>around</title><body><pre id="told"></pre><script>
var told = [];
addEventListener("message", function (m) {
  told.push(m.data);
  document.getElementById("told").textContent = JSON.stringify(told);
});
PAGES.forEach(function (page) {
  var f = document.createElement("iframe");
  f.width = 390; f.height = 600; f.src = page;
  document.body.append(f);
});
</script></body>`

// Every text has the contrast that WCAG 2.2, 1.4.3 asks for as a browser shows
// it, by day and by night, and no page is wider than a narrow window (1.4.10).
func TestContrastInABrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a browser")
	}
	reckoned := map[string]string{}
	var pages []string
	for name, text := range books()["demo"] {
		reckoned[name] = strings.Replace(text, "</body>", reckon, 1)
		if strings.HasSuffix(name, ".html") {
			pages = append(pages, name)
		}
	}
	list, err := json.Marshal(pages)
	require.NoError(t, err)
	reckoned["around.html"] = strings.Replace(around, "PAGES", string(list), 1)
	b := open(t, reckoned)
	for scheme, flag := range map[string]string{"light": "--blink-settings=preferredColorScheme=1", "dark": "--blink-settings=preferredColorScheme=0"} {
		var told []struct {
			Page  string
			Dark  bool
			Seen  int
			Wrong []string
		}
		require.NoError(t, json.Unmarshal([]byte(textOf(byID(b.load(t, "around.html", flag), "told"))), &told))
		assert.Len(t, told, len(pages))
		for _, page := range told {
			assert.Equalf(t, scheme == "dark", page.Dark, "%s, %s", scheme, page.Page)
			assert.NotZero(t, page.Seen, page.Page)
			assert.Emptyf(t, page.Wrong, "%s, %s", scheme, page.Page)
		}
	}
}
