package editors

import (
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// colored is a text that has one of everything, with a letter before each piece
// that has a color of its own: c a comment, b a block's word, n an attribute's
// name, t a text, d a number, w a word that is a value.
const colored = `«c# a comment»
«bcontainer» «t"a-b"» { «c// another»
  «nwhen»  = dye.by_eye == amount(«t"1 kg"») && count != «d2»
  «nwith»  = [«t"x \"y\""», «wtrue», «d1.5»]
  «nnotes» = «t<<-END»
«t    two = "lines"»
«t    END»
  «c/* a»
«c  long one */» «nload» = «t"7 % of wax"»
  «bstep» «t"trim base"» {}
}
`

// Kate's own highlighter, with the file type of this folder.
func TestKateColors(t *testing.T) {
	if _, err := exec.LookPath("kate-syntax-highlighter"); err != nil {
		t.Skip("kate-syntax-highlighter is not installed")
	}
	home := t.TempDir()
	types := filepath.Join(home, "org.kde.syntax-highlighting/syntax")
	require.NoError(t, os.MkdirAll(types, 0o755))
	data, err := os.ReadFile("kate/candle.xml")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(types, "candle.xml"), data, 0o644))
	text := filepath.Join(home, "x.candle.hcl")
	require.NoError(t, os.WriteFile(text, []byte(regexp.MustCompile(`«.|»`).ReplaceAllString(colored, "")), 0o644))
	cmd := exec.Command("kate-syntax-highlighter", "--theme", "Breeze Light", text)
	cmd.Env = append(os.Environ(), "HOME="+home, "XDG_DATA_HOME="+home, "LC_ALL=C.UTF-8")
	out, err := cmd.Output()
	require.NoError(t, err)
	_, page, _ := strings.Cut(string(out), "<pre>\n")
	page, _, _ = strings.Cut(page, "</pre>")
	page = strings.NewReplacer(
		`<span style="color:#898887;">`, "«c", `<span style="font-weight:bold;">`, "«b", `<span style="color:#0057ae;">`, "«n",
		`<span style="color:#bf0303;">`, "«t", `<span style="color:#b08000;">`, "«d", `<span style="color:#aa5500;">`, "«w", "</span>", "»").Replace(page)
	assert.Equal(t, colored, html.UnescapeString(page))
}
