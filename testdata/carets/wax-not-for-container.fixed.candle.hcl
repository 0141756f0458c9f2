# Pillar wax in a jar, for sale. Somebody else lights it.

recipe "rattles-in-the-glass" {
  made_for = "sale"
  pot      = "pitcher-4"
  wax "pierhead-container" { weight = "450 g" }
  container "tumbler-10" {
    count = 2
    wick  = "cored-cotton-44"
    fill  = "250 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "warm container" { to = "120 °F" }
  step "melt" {
    to   = "184 °F"
    over = "water bath"
  }
  step "pour" { at = "172 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
  test_burn "2026-10-01" {
    formula = "40000gk-deqv8j"
    candle  = "A"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
  test_burn "2026-10-02" {
    formula = "40000gk-deqv8j"
    candle  = "B"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
  test_burn "2026-10-03" {
    formula = "40000gk-deqv8j"
    candle  = "C"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
}

# On one's own shelf it is worth knowing.
recipe "on-our-own-shelf" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "pierhead-container" { weight = "450 g" }
  container "tumbler-10" {
    count = 2
    wick  = "cored-cotton-44"
    fill  = "250 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "warm container" { to = "120 °F" }
  step "melt" {
    to   = "184 °F"
    over = "water bath"
  }
  step "pour" { at = "172 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}
