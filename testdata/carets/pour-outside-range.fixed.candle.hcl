# This soy is poured at 130 to 145 °F (54.4 to 62.8 °C), its ends included.

recipe "too-hot" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "millrace-soy" { weight = "790 g" }
  container "straight-jar-8" {
    count = 4
    wick  = "cored-cotton-44"
    fill  = "220 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "pour" { /* not 60 °C */ at = "145 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}

recipe "too-cool" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "millrace-soy" { weight = "790 g" }
  container "straight-jar-8" {
    count = 4
    wick  = "cored-cotton-44"
    fill  = "220 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "pour" { at = "54 °C" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}

recipe "at-the-top" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "millrace-soy" { weight = "790 g" }
  container "straight-jar-8" {
    count = 4
    wick  = "cored-cotton-44"
    fill  = "220 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "pour" { at = "145 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}

recipe "at-the-bottom" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "millrace-soy" { weight = "790 g" }
  container "straight-jar-8" {
    count = 4
    wick  = "cored-cotton-44"
    fill  = "220 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "pour" { at = "130 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}
