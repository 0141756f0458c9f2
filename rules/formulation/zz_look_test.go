package formulation_test

import (
	"fmt"
	"testing"
)

func wax(key, weight string) string { return "wax \"" + key + "\" {\n  weight = \"" + weight + "\"\n}\n" }
func bare(key string) string { return "wax \"" + key + "\" {}\n" }
func frag(key, attr, v string) string {
	return "fragrance \"" + key + "\" {\n  " + attr + " = \"" + v + "\"\n}\n"
}
func dye(key, attr, v string) string { return "dye \"" + key + "\" {\n  " + attr + " = \"" + v + "\"\n}\n" }
func additive(key, attr, v string) string {
	return "additive \"" + key + "\" {\n  " + attr + " = \"" + v + "\"\n}\n"
}

func TestLook(t *testing.T) {
	kilo := wax("six", "1000 g")
	for _, body := range []string{
		wax("six", "50 oz") + frag("thyme", "weight", "3 oz"),
		wax("six", "50 oz") + frag("thyme", "weight", "3.01 oz"),
		wax("six", "1450 g") + frag("thyme", "load", "7 % of wax"),
		wax("six", "1.45 kg") + frag("thyme", "load", "5.66 % of total"),
		wax("six", "1.45 kg") + frag("thyme", "load", "5.660378 % of total"),
		wax("six", "1.45 kg") + frag("thyme", "load", "6.0000001 % of wax"),
		kilo + frag("thyme", "load", "1 oz per lb"),
		kilo + frag("thyme", "load", "0.96 oz per lb"),
		kilo + frag("thyme", "load", "61 g per kg"),
		kilo + frag("thyme", "weight", "70 mL"),
		kilo + frag("musk", "weight", "70 mL"),
		kilo + frag("thyme", "load", "5 to 8 % of wax"),
		kilo + frag("thyme", "load", "7 %"),
		kilo + frag("thyme", "load", "4 % of wax") + frag("clove", "load", "3 % of wax"),
		kilo + frag("thyme", "load", "4 % of total") + frag("clove", "weight", "30 g") + frag("musk", "load", "1 oz per lb"),
		bare("six") + frag("thyme", "load", "7 % of wax"),
		bare("six") + frag("thyme", "weight", "7 g"),
		wax("six", "500 g") + wax("ten", "500 g") + frag("thyme", "load", "7 % of wax"),
		wax("six", "500 g") + wax("ten", "500 g") + frag("thyme", "load", "8 % of wax"),
		wax("six", "500 g") + wax("ten", "500 g") + frag("thyme", "load", "8.1 % of wax"),
		bare("six") + bare("ten") + frag("thyme", "load", "7 % of wax"),
		bare("six") + bare("ten") + frag("thyme", "load", "11 % of wax"),
		bare("six") + bare("ten") + frag("thyme", "load", "16 % of wax"),
		wax("six", "500 g") + wax("no-sheet", "500 g") + frag("thyme", "load", "8 % of wax"),
		wax("six", "500 g") + wax("ten-of-total", "500 g") + frag("thyme", "load", "9 % of wax"),
		wax("six", "500 g") + wax("nothing-said", "500 g") + frag("thyme", "load", "9 % of wax"),
		wax("ten-of-total", "1000 g") + frag("thyme", "load", "11.12 % of wax"),
		wax("ten-of-total", "1000 g") + frag("thyme", "load", "10.5 % of wax") + additive("stearin", "load", "10 % of wax"),
		wax("ten-of-total", "1000 g") + frag("thyme", "load", "12 % of wax") + additive("stearin", "load", "5 % of wax"),
		wax("no-sheet", "1000 g") + frag("thyme", "load", "7 % of wax"),
		wax("no-sheet", "1000 g") + frag("thyme", "load", "16 % of wax"),
		wax("nothing-said", "1000 g") + frag("thyme", "load", "7 % of wax"),
		wax("nothing-said", "1000 g") + frag("thyme", "load", "700 % of wax"),
		wax("nothing-said", "1000 g") + frag("thyme", "load", "110 % of total"),
		wax("unknown", "1000 g") + frag("thyme", "load", "700 % of wax"),
		wax("six", "1000 g") + frag("thyme", "load", "110 % of total"),
		wax("six", "1000 g") + frag("thyme", "load", "700 % of wax"),
		wax("broken-limit", "1000 g") + frag("thyme", "load", "20 % of wax"),
		wax("unknown", "1000 g") + frag("thyme", "load", "20 % of wax"),
		wax("house", "1000 g") + frag("thyme", "load", "8.1 % of wax"),
		wax("sponge", "1000 g") + frag("thyme", "load", "16 % of wax"),
		wax("sponge", "1000 g") + frag("thyme", "load", "21 % of wax"),
		kilo + frag("thyme", "load", "5.8 % of wax"),
		kilo + frag("strict", "load", "5.8 % of wax"),
		kilo + frag("strict", "load", "6.8 % of wax"),
		kilo + frag("strict", "weight", "40 g")+ frag("thyme", "load", "1 % of total"),
		kilo + "fragrance \"thyme\" {\n load = \"5 % of wax\"\n weight = \"70 g\"\n}\n",
		kilo + "fragrance \"thyme\" {\n load = \"5.0 % of wax\"\n weight = \"51 g\"\n}\n",
		kilo + "fragrance \"thyme\" {\n load = \"5.00 % of wax\"\n weight = \"1.8 oz\"\n}\n",
		kilo + dye("madder", "amount", "21 drops"),
		kilo + dye("madder", "amount", "20 drops"),
		kilo + dye("block-red", "amount", "1/2 block"),
		kilo + dye("uncounted", "amount", "3 drops"),
		kilo + dye("uncounted", "amount", "3 chips"),
		kilo + dye("madder", "load", "0.25 % of wax"),
		wax("six", "20 g") + dye("madder", "weight", "0.08 g"),
		wax("six", "20 g") + dye("madder", "amount", "1 drop"),
		kilo + additive("hardener", "load", "1.1 % of total"),
		kilo + additive("hardener", "load", "1.1 % of wax"),
		kilo + additive("hardener", "weight", "2 g"),
		kilo + additive("stearin", "load", "0.5 oz per lb"),
		kilo + additive("stearin", "load", "11 %"),
		kilo + frag("thyme", "load", "0.06 % of wax"),
		kilo + frag("thyme", "load", "0.01 oz per lb"),
		wax("gel", "1000 g") + frag("strict", "load", "3 % of wax"),
		wax("gel", "1000 g") + frag("clove", "load", "3 % of wax"),
		wax("gel", "1000 g") + frag("musk", "load", "3 % of wax"),
		wax("six", "854.9 g") + "mold \"cube\" {}\n",
		wax("six", "855 g") + "mold \"cube\" {}\n",
		wax("six", "990 g") + "mold \"cube\" {}\n",
		wax("six", "990.1 g") + "mold \"cube\" {}\n",
		wax("six", "1080 g") + "mold \"cube\" {}\n",
		wax("six", "1080.1 g") + "mold \"cube\" {}\n",
		wax("six", "4 kg") + frag("thyme", "load", "5 % of wax") + dye("madder", "amount", "to shade") + "mold \"cube\" {\n count = 2\n}\ncontainer \"jar\" {\n count = 3\n fill = \"10 mm below rim\"\n}\n",
		wax("six", "4 kg") + "mold \"cube\" {\n count = 0\n}\n",
		wax("six", "4 kg") + "taper \"ten\" {\n count = 12\n}\n",
	} {
		r := run(t, body)
		fmt.Println("=====\n" + body)
		for _, f := range r.Findings {
			fmt.Printf("  %s %s on %s\n     %s\n", f.Level, f.Rule.Name, f.At.File.Text.Slice(f.At.Span), f.Message)
			for _, fix := range f.Repairs() {
				fmt.Printf("     -> %s\n", fix.Title)
			}
		}
		fmt.Println("  unchecked", needs(r))
	}
}
