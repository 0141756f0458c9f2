# How it is written, before what is made: each slip is told once, on its own
# characters, and hides nothing else.

fragrance "salt-wind" {
  title       = "Salt wind"
  flash_point = "93 °C"
  density     = "0.97 g/mL"
  water_based = false
  components  = "none classified"
}

  recipe "written-in-haste" {
# ^^^^^^^^^^^^^^^^^^^^^^^^^ made-for-missing consider
# ^^^^^^^^^^^^^^^^^^^^^^^^^ test-burn-missing must
    titel = "Written in haste"
#   ^^^^^ unknown-attribute must
    pot   = "pitcher-4"
    wax "northlight-pilar" {
#       ^^^^^^^^^^^^^^^^^^ unknown-key must
      weight = "22 oz"
    }
    fragrance "salt-wind" { load = "5 %" }
#                                  ^^^^^ load-basis-unstated must
    mold "pillar-3x6" { wick = "flat-braid-24" }
    step "seal wick hole" { with = "rubber-plug" }
    step "melt" {
      to   = "186"
#             ^^^ unit-missing must
      over = "water bath"
    }
    step "add fragrance" { at = "183 °F" stir = "2 min" }
#                                        ^^^^^^^^^^^^^^ two-on-one-line must
    step "por" {
#        ^^^^^ unknown-step must
      at    = "176 oz"
#              ^^^^^^ unit-wrong-kind must
      leave = "3/8 in"
    }
    step "cure" { for = "3 days" }
    step "trim wick" { to = "1/4 in" }
    step "attach label" { label = "us-base" }
  }

recipe "let-off" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "22 oz" }
  mold "pillar-3x6" { wick = "flat-braid-24" }
  step "seal wick hole" { with = "rubber-plug" }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
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
  step "trim wick" { to = "1 in" }
#                         ^^^^^^ wick-untrimmed should
  step "attach label" { label = "us-base" }
  concession "wick-untrimmed" {
    reason = "Cut to 1/4 in when it is lit"
    until  = "2026-10-19"
#            ^^^^^^^^^^^^ concession-expired should
  }
  concession "stir-too-short" {
#            ^^^^^^^^^^^^^^^^ concession-unused consider
    reason = "Never was"
  }
  concession "syntax" { reason = "As we write it" }
#            ^^^^^^^^ concession-not-allowed must
}
