# This soy is poured at 130 to 145 °F. 160 °F is too hot for it.
recipe "pour-too-hot" {
  title    = "Poured too hot"
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
    wick  = "cored-cotton-44"
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
    at = "160 °F"
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
