# A weight and a load of the same amount go down together, and a volume is
# weighed in its own units.
recipe "twice-written" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" {
    weight = "44 oz"
  }
  fragrance "tide-and-thyme" {
    load   = "6 % of wax"
    weight = "2.64 oz"
  }
  mold "pillar-3x6" {
    count = 2
    wick  = "flat-braid-24"
  }
  step "seal wick hole" { with = "rubber-plug" }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "183 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h"
    at    = "182 °F"
  }
  step "unmold" { after = "14 h" }
  step "cure" { for = "3 days" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}

recipe "by-the-ounce" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "pierhead-container" {
    weight = "2 lb 13 oz"
  }
  fragrance "amber-lantern" {
    weight = "3.16 oz"
  }
  container "tumbler-10" {
    count = 6
    wick  = "cored-cotton-44"
    fill  = "250 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "warm container" { to = "110 °F" }
  step "melt" {
    to   = "185 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "181 °F"
    stir = "2 min"
  }
  step "pour" { at = "166 °F" }
  step "cure" { for = "3 days" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}
