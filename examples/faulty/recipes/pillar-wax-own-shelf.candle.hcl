# Pillar wax in a jar for one's own shelf: worth knowing, no more than that.
# But the glass is at room temperature, and 102 °F below the pour it may crack.
recipe "pillar-wax-own-shelf" {
  title    = "Pillar wax in a cold tumbler"
  makes    = "jar"
  made_for = "own use"
  pot      = "pitcher-4"

  wax "northlight-pillar" {
    weight = "450 g"
  }
  fragrance "tide-and-thyme" {
    load = "4 % of wax"
  }
  container "tumbler-10" {
    count = 2
    wick  = "cored-cotton-44"
    fill  = "250 mL"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "melt" {
    to   = "184 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "181 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "172 °F"
  }
  step "cool" {
    for = "24 h"
  }
  step "cure" {
    for = "2 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-jar"
    on    = "base"
  }
}
