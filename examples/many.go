package examples

import (
	"fmt"
	"io/fs"
	"regexp"
	"strings"
	"testing/fstest"
)

var (
	burnBlock = regexp.MustCompile(`(?ms)^ *test_burn "[^"]*" \{.*?^ *\}\n`)
	recipeKey = regexp.MustCompile(`(?m)^recipe "([^"]*)"`)
	forOthers = regexp.MustCompile(`made_for *= "(sale|class)"`)
)

// Many is a shop for measuring: the demo shop's stock with as many recipes as
// asked for, about 1 KB each. They are the demo recipes over and over, after the
// first round under other keys, for own use and without their test burns.
func Many(recipes int) (fstest.MapFS, error) {
	shop := fstest.MapFS{}
	var texts []string
	err := fs.WalkDir(Shop(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(Shop(), name)
		if strings.HasPrefix(name, "recipes/") {
			texts = append(texts, burnBlock.ReplaceAllString(string(data), ""))
		} else {
			shop[name] = &fstest.MapFile{Data: data}
		}
		return err
	})
	for i := range recipes {
		text := texts[i%len(texts)]
		if i >= len(texts) { // the trials speak of the first
			text = recipeKey.ReplaceAllString(text, fmt.Sprintf(`recipe "$1-%d"`, i))
		}
		shop[fmt.Sprintf("recipes/%05d.candle.hcl", i)] = &fstest.MapFile{Data: []byte(forOthers.ReplaceAllString(text, `made_for = "own use"`))}
	}
	return shop, err
}
