# Pillar wax in a jar that a learner takes home.
recipe "pillar-wax-for-class" {
  title    = "Pillar wax in a tumbler, for a class"
  makes    = "jar"
  made_for = "class"
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
  step "warm container" {
    to = "120 °F"
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
