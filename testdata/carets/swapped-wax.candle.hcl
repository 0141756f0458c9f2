# A container wax in a pillar mold: the wax is swapped first, and what the new
# one bears is left as it is.
recipe "too-soft" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "millrace-soy" {
#     ^^^^^^^^^^^^^^ wax-not-for-mold must
    weight = "1.24 kg"
  }
  fragrance "tide-and-thyme" {
    load = "5 % of wax"
  }
  mold "pillar-3x6" {
    count = 2
    wick  = "flat-braid-24"
#           ^^^^^^^^^^^^^^^ wick-not-for-wax should
  }
  step "seal wick hole" { with = "rubber-plug" }
  step "melt" {
    to   = "186 °F"
#          ^^^^^^^^ heat-above-ceiling must
    over = "water bath"
    wax  = ["millrace-soy"]
  }
  step "add fragrance" {
    at   = "183 °F"
#          ^^^^^^^^ fragrance-added-too-hot should
    stir = "2 min"
  }
  step "pour" {
    at    = "176 °F"
#           ^^^^^^^^ pour-too-hot should
    leave = "3/8 in"
  }
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h"
    at    = "182 °F"
  }
  step "unmold" { after = "14 h" }
  step "cure" { for = "7 days" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}
