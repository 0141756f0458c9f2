package lint

import (
	"fmt"
	"strings"

	"wickrule/schema"
)

// Names under which an example's own texts are laid over a shop. They come
// last in the order of names, so that what is there already counts as first.
const (
	exampleFile      = "try-this" + FileSuffix
	exampleStockFile = "try-this-stock" + FileSuffix
)

// Over lays the example over a shop and reads it: the shop with the changed
// or added file, and the files the example is about. It is an error when the
// recipe does not exist or a change does not stand exactly once.
func (e Example) Over(base *Shop) (shop *Shop, about []*schema.File, err error) {
	if e.Recipe == "" {
		about = append(about, schema.Read(exampleFile, []byte(e.Text)))
	} else {
		recipe := base.Find("recipe", e.Recipe)
		if recipe == nil {
			return nil, nil, fmt.Errorf("the example shop has no recipe %s", e.Recipe)
		}
		text, err := e.changed(recipe.File.Text.String())
		if err != nil {
			return nil, nil, err
		}
		about = append(about, schema.Read(recipe.File.Name, []byte(text)))
	}
	if e.Stock != "" {
		about = append(about, schema.Read(exampleStockFile, []byte(e.Stock)))
	}
	return base.With(about...), about, nil
}

func (e Example) changed(text string) (string, error) {
	for _, c := range e.Changes {
		if n := strings.Count(text, c.From); n != 1 {
			return "", fmt.Errorf("%q stands %d times in recipe %s, not once", c.From, n, e.Recipe)
		}
		text = strings.Replace(text, c.From, c.To, 1)
	}
	return text, nil
}
