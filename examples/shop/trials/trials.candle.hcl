# What we tried, and what came of it. Invented, as all of this shop is.

trial "putty-reuse" {
  question = "How many pours does a ball of wick putty seal before it weeps?"
  date     = "2026-09-12"
  tried    = "wick-putty"
  up_to    = "212 °F"
  outcome  = "mixed"
  notes    = "Clean for six pours; wept at the seventh."
}

trial "glue-under-tabs" {
  question = "How warm may a pour be before a glued tab leans?"
  date     = "2026-08-03"
  recipe   = "fogbank-soy"
  tried    = "tab-glue"
  up_to    = "142 °F"
  outcome  = "held"
  notes    = "Six jars at 142 °F stood straight. At 146 °F two of six leaned."
}

trial "glass-in-winter" {
  question = "How cold may the room be before wax lets go of the glass?"
  date     = "2026-01-20"
  tried    = "tumbler-10"
  outcome  = "failed"
  notes    = "At 60 °F four of six tumblers had wet spots the next morning; at 66 °F none."
}

trial "small-scale" {
  question = "How little dye does the small scale weigh the same way twice?"
  date     = "2026-03-02"
  tried    = "madder"
  outcome  = "mixed"
  notes    = "0.2 g came out the same ten times of ten, 0.1 g four times."
}

trial "beeswax-color" {
  question = "From what heat on does beeswax darken in half an hour?"
  date     = "2026-02-11"
  tried    = "clover-beeswax"
  up_to    = "178 °F"
  outcome  = "held"
  notes    = "No change of color after half an hour at 178 °F; plainly browner at 190 °F."
}

trial "sweating-jars" {
  question = "Does a longer stir stop strong jars from sweating?"
  date     = "2026-05-18"
  tried    = "millrace-soy"
  outcome  = "held"
  notes    = "Two minutes and a day of rest: none of twelve sweated. One minute: five of twelve."
}

trial "pitcher-spills" {
  question = "How full can a pitcher be carried across the room?"
  date     = "2026-04-07"
  tried    = "pitcher-4"
  outcome  = "held"
  notes    = "Three quarters, ten times, without a drop."
}

trial "wooden-wick-trim" {
  question = "How long may a wooden wick be at the first lighting?"
  date     = "2026-06-25"
  tried    = "wooden-half-inch"
  outcome  = "mixed"
  notes    = "3/16 in burned evenly; 1/4 in flared once in four."
}

trial "bubbles-in-gel" {
  question = "From what heat on do bubbles rise out of gel by themselves?"
  date     = "2026-07-30"
  recipe   = "tidepool-gel"
  tried    = "clearwater-gel"
  outcome  = "held"
  notes    = "At 190 °F and above the lanterns were clear by morning; at 186 °F two of six had a veil."
}
