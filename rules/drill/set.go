package drill

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"path"
	"strings"

	"wickrule/lint"
)

// The names in a folder of exercises.
const (
	SetName   = "drill.json"
	GuideName = "read-me.txt"
	ShelfName = "shelf" // the folder with the shop that the exercises are of
)

// SetVersion is the version of the form of SetName.
const SetVersion = 1

// Set is what a folder of exercises is made from. The answers are in it, sealed
// from a passing eye and from no other.
type Set struct {
	Version   int       `json:"drill"`
	Shop      string    `json:"shop"`
	Seed      string    `json:"seed"`
	About     string    `json:"about,omitempty"`
	Day       string    `json:"day"`
	Exercises []SetItem `json:"exercises"`
}

// SetItem is one exercise of a Set.
type SetItem struct {
	File   string `json:"file"`
	Number int    `json:"number"`
	Text   string `json:"text"`   // Digest of the recipe in it
	Sealed string `json:"sealed"` // what was planted in what
}

// SetOut makes a folder of exercises: the texts by name. With the same shop,
// seed, day and program they have the same bytes.
func (s *School) SetOut(shop, seed, about string, exercises int) (map[string]string, error) {
	set := Set{Version: SetVersion, Shop: shop, Seed: seed, About: about, Day: s.Today}
	files := map[string]string{}
	series := s.Series(seed, about)
	for range exercises {
		e, err := series.Next()
		if err != nil {
			return nil, err
		}
		item := SetItem{File: fmt.Sprintf("exercise-%02d.hcl", e.Number), Number: e.Number, Text: Digest(e.Text), Sealed: e.sealed()}
		set.Exercises = append(set.Exercises, item)
		files[item.File] = heading(shop, e.Number, len(e.Faults), e.Draft) + e.Text
	}
	data, err := json.MarshalIndent(set, "", "  ")
	if err != nil { // numbers and text only
		panic(err)
	}
	files[SetName] = string(data) + "\n"
	files[GuideName] = fmt.Sprintf(guide, shop)
	shelf := s.Files()
	if _, ok := shelf[lint.ShopFileName]; !ok {
		shelf[lint.ShopFileName] = "# This file makes a shop of its own of the folder it is in.\n"
	}
	for name, text := range shelf {
		// What the shop takes from folders beside it lies inside of the shelf.
		files[path.Join(ShelfName, strings.ReplaceAll(name, "../", "beside/"))] = text
	}
	return files, nil
}

// heading is what stands above the recipe in an exercise's file.
func heading(shop string, number, slips int, draft bool) string {
	text := fmt.Sprintf("# Exercise %d, %s. %s in this recipe: mend it.\n# Nothing is poured from an exercise.\n", number, oneLine(shop), Amiss(slips))
	if draft {
		text += "# It is for a class, and not test burned yet.\n"
	}
	return text + "# What the shop has in stock stands in the folder " + ShelfName + ". Then: wickrule drill mark\n\n"
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// Amiss says how many things are wrong.
func Amiss(n int) string {
	switch n {
	case 1:
		return "One thing is wrong"
	case 2:
		return "Two things are wrong"
	case 3:
		return "Three things are wrong"
	}
	return fmt.Sprintf("%d things are wrong", n)
}

const guide = `Exercises of %s

Each file exercise-….hcl is a recipe of the shop in which somebody made a slip
or two, or three. Open it in any editor, find what is wrong, and mend it. What
the shop has in stock, and its own rules, stand in the folder shelf: look
things up there, and leave it as it is.

Then, in this folder:

    wickrule drill mark                         marks all of them
    wickrule drill mark exercise-01.hcl         marks one
    wickrule drill mark --hint line             says where to look; group, line,
                                                why and fix say more each
    wickrule drill mark --answers               tells everything

A slip counts as mended where the checker has nothing more to say of it, the
thing it was about is still in the recipe, and no concession silences it.

The waxes, oils and figures are those of the shop. Nothing here is a test
report; your suppliers' sheets, local codes and licensed practice go first.
`

// ReadSet reads a SetName.
func ReadSet(data []byte) (*Set, error) {
	set := &Set{}
	in := json.NewDecoder(bytes.NewReader(data))
	in.DisallowUnknownFields()
	if err := in.Decode(set); err != nil {
		return nil, fmt.Errorf("it is not what drill writes: %w", err)
	}
	if set.Version != SetVersion {
		return nil, fmt.Errorf("it is of version %d, and this program knows version %d", set.Version, SetVersion)
	}
	if set.Seed == "" || len(set.Exercises) == 0 {
		return nil, errors.New("it names no seed or no exercises")
	}
	for _, item := range set.Exercises {
		if item.Number < 1 || item.Number > MostExercises || item.File != path.Base(item.File) || !strings.HasSuffix(item.File, ".hcl") {
			return nil, fmt.Errorf("it names an exercise that cannot be: %q", item.File)
		}
	}
	return set, nil
}

// MostExercises is how many exercises are made at a time.
const MostExercises = 99
