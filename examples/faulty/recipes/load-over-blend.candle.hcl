# A loose blend. By weight its two waxes hold 5.7 % between them; this asks for 6 %.
recipe "load-over-blend" {
  title    = "Too much scent, in a blend"
  makes    = "pillar"
  made_for = "own use"
  pot      = "pitcher-4"

  wax "northlight-pillar" {
    weight = "425 g"
  }
  wax "frostfield-stearin" {
    weight = "75 g"
  }
  fragrance "rain-on-slate" {
    load = "6 % of wax"
  }
  mold "beacon-cone" {
    count = 2
    wick  = "flat-braid-24"
  }

  step "seal wick hole" {
    with = "rubber-plug"
  }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "182 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "174 °F"
    leave = "3/8 in"
  }
  step "relief holes" {
    after = "2 h"
    count = 4
  }
  step "second pour" {
    after = "1 h 15 min"
    at    = "180 °F"
  }
  step "unmold" {
    after = "14 h"
  }
  step "cure" {
    for = "3 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-small"
    on    = "base"
  }
}
