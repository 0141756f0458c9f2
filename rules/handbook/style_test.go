package handbook

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// luminance is the relative luminance of a color "#rrggbb", and contrast the
// contrast ratio of two, as WCAG 2.2 defines both in its glossary.
func luminance(t *testing.T, color string) float64 {
	t.Helper()
	n, err := strconv.ParseUint(strings.TrimPrefix(color, "#"), 16, 32)
	require.NoError(t, err, color)
	linear := func(eight uint64) float64 {
		c := float64(eight&0xff) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(n>>16) + 0.7152*linear(n>>8) + 0.0722*linear(n)
}

func contrast(t *testing.T, a, b string) float64 {
	l, m := luminance(t, a), luminance(t, b)
	return (max(l, m) + 0.05) / (min(l, m) + 0.05)
}

// The formula itself: black on white is 21 to 1, and the gray that is known to
// just pass on white.
func TestContrastFormula(t *testing.T) {
	assert.InDelta(t, 21, contrast(t, "#000000", "#ffffff"), 1e-9)
	assert.InDelta(t, 4.54, contrast(t, "#767676", "#ffffff"), 0.005)
	assert.Less(t, contrast(t, "#777777", "#ffffff"), 4.5)
}

// schemes are the colors of the style sheet by name: light, dark, on paper.
func schemes(t *testing.T) map[string]map[string]string {
	t.Helper()
	lists := regexp.MustCompile(`:root \{([^}]*)\}`).FindAllStringSubmatch(string(style), -1)
	require.Len(t, lists, 3)
	named := map[string]map[string]string{}
	for i, scheme := range []string{"light", "dark", "on paper"} {
		colors := map[string]string{}
		for _, m := range regexp.MustCompile(`--([a-z]+): (#[0-9a-f]{6});`).FindAllStringSubmatch(lists[i][1], -1) {
			colors[m[1]] = m[2]
		}
		require.Equal(t, 13, len(colors), scheme)
		named[scheme] = colors
	}
	return named
}

// WCAG 2.2, 1.4.3 (AA): text has 4.5 to 1 on every ground that it can stand
// on. 1.4.11: what a field or the focus is seen by has 3 to 1.
func TestContrastOfTheStyleSheet(t *testing.T) {
	for scheme, color := range schemes(t) {
		for _, text := range []string{"ink", "faint", "link", "visited", "must", "should", "consider"} {
			for _, ground := range []string{"paper", "shade"} {
				assert.GreaterOrEqualf(t, contrast(t, color[text], color[ground]), 4.5, "%s: %s on %s", scheme, text, ground)
			}
		}
		for _, text := range []string{"ink", "link", "visited"} {
			for _, ground := range []string{"mark", "divider"} {
				assert.GreaterOrEqualf(t, contrast(t, color[text], color[ground]), 4.5, "%s: %s on %s", scheme, text, ground)
			}
		}
		for _, seen := range []string{"faint", "link"} {
			for _, ground := range []string{"paper", "shade", "desk", "divider"} {
				assert.GreaterOrEqualf(t, contrast(t, color[seen], color[ground]), 3.0, "%s: %s beside %s", scheme, seen, ground)
			}
		}
	}
}

// All colors stand in the lists, so that what was reckoned above is all there
// is. Red and green are never all that tells two things apart: every level has
// its word.
func TestColorsStandInTheLists(t *testing.T) {
	text := regexp.MustCompile(`(?s):root \{[^}]*\}|/\*.*?\*/`).ReplaceAllString(string(style), "")
	assert.NotRegexp(t, `#[0-9a-fA-F]{3}`, text)
	assert.NotRegexp(t, `\b(rgb|hsl|color-mix|opacity)\b`, text)
	for _, m := range regexp.MustCompile(`(?:^|[;{ ])(color|background|border(?:-[a-z]+)*|outline):([^;]*);`).FindAllStringSubmatch(text, -1) {
		value := regexp.MustCompile(`var\(--[a-z]+\)`).ReplaceAllString(m[2], "")
		assert.NotRegexp(t, `\b(white|black|gray|grey|red|green|blue|inherit|currentcolor)\b`, value)
	}
}

// What moves stops for those who ask for it (WCAG 2.2, 2.3.3), what has the
// focus is seen (2.4.7), and there are rules for paper.
func TestStyleKeepsToPreferences(t *testing.T) {
	assert.Contains(t, string(style), "prefers-reduced-motion: reduce")
	assert.Contains(t, string(style), ":focus-visible { outline: .2rem solid")
	assert.Contains(t, string(style), "@media print")
	assert.NotContains(t, string(style), "transition")
	assert.NotContains(t, string(style), "animation")
}
