# The wick has a lead core. Burning it puts lead in the air of the room;
# 16 CFR 1500.17(a)(13) bans it.
recipe "lead-core" {
  title    = "Old wick"
  makes    = "jar"
  made_for = "own use"
  pot      = "pitcher-4"

  wax "millrace-soy" {
    weight = "1580 g"
  }
  fragrance "rain-on-slate" {
    load = "8 % of wax"
  }
  container "straight-jar-8" {
    count = 8
    wick  = "old-lead-core"
    fill  = "230 mL"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "172 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "138 °F"
  }
  step "cool" {
    for = "24 h"
  }
  step "cure" {
    for = "10 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-jar"
    on    = "base"
  }
}
