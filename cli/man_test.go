package cli_test

import (
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/cli"
)

// The pages for man are read without a complaint by the two readers of such
// pages that Debian has; only the day is missing, which a release knows.
func TestManPages(t *testing.T) {
	p := newPlace(t, nil)
	require.Equal(t, cli.Good, p.run("help", "--man"))
	overview := p.out.String()
	pages := map[string]string{"wickrule": overview}
	for _, m := range regexp.MustCompile(`wickrule\\-(\w+)\\fR\(1\)`).FindAllStringSubmatch(overview, -1) {
		require.Equal(t, cli.Good, p.run("help", "--man", m[1]))
		pages["wickrule-"+m[1]] = p.out.String()
	}
	require.Contains(t, pages, "wickrule-check")
	require.Contains(t, pages, "wickrule-help")
	for name, page := range pages {
		p.write(name+".1", page)
		file := filepath.Join(p.folder, name+".1")
		if man, err := exec.LookPath("man"); err == nil {
			out, err := exec.Command(man, "--warnings", "--encoding=UTF-8", "--local-file", file).CombinedOutput()
			require.NoError(t, err, string(out))
			assert.NotContains(t, string(out), "warning", name)
			assert.Contains(t, string(out), "NAME")
		}
		if mandoc, err := exec.LookPath("mandoc"); err == nil {
			out, _ := exec.Command(mandoc, "-T", "lint", "-W", "warning", file).CombinedOutput()
			for line := range strings.Lines(string(out)) {
				assert.Contains(t, line, "missing date", name)
			}
		}
	}
}

// A page says what help says, and what is typed can be copied from it.
func TestManPageOfCheck(t *testing.T) {
	p := newPlace(t, nil)
	require.Equal(t, cli.Good, p.run("help", "--man", "check"))
	page := p.out.String()
	assert.Regexp(t, `^\.TH "WICKRULE\\-CHECK" 1 `, page)
	assert.Contains(t, page, "\n.SH NAME\nwickrule\\-check \\- say what must be put right")
	assert.Contains(t, page, "\n.TP\n\\fB\\-\\-level\\fR WORD\n")
	assert.NotRegexp(t, `(?m)^[^.].*[^\\]-`, page)
	p = newPlace(t, nil)
	require.Equal(t, cli.NotWorked, p.run("help", "--man", "chek"))
	assert.Contains(t, p.err.String(), `the nearest is "check"`)
}
