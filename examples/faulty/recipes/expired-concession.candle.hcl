# The jar is filled to 3 mm below its rim, past its fill line. That was conceded for January, and January is over.
recipe "expired-concession" {
  title    = "Filled high"
  makes    = "jar"
  made_for = "own use"
  pot      = "pitcher-4"

  wax "millrace-soy" {
    weight = "2.12 kg"
  }
  fragrance "rain-on-slate" {
    load = "8 % of wax"
  }
  container "straight-jar-8" {
    count = 8
    wick  = "cored-cotton-44"
    fill  = "3 mm below rim"
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
  concession "container-overfilled" {
    reason = "The last of the tall jars, for our own shelf"
    until  = "2026-01-31"
  }
}
