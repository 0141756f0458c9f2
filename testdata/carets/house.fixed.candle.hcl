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
    title = "Written in haste"
    pot   = "pitcher-4"
    made_for = "sale"
    wax "northlight-pillar" {
      weight = "22 oz"
    }
    fragrance "salt-wind" { load = "5 % of wax" }
    mold "pillar-3x6" { wick = "flat-braid-24" }
    step "seal wick hole" { with = "rubber-plug" }
    step "melt" {
      to   = "186"
      over = "water bath"
    }
    step "add fragrance" {
      at = "183 °F"
      stir = "2 min"
    }
    step "pour" {
      at    = "176 oz"
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
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
  concession "wick-untrimmed" {
    reason = "Cut to 1/4 in when it is lit"
    until  = "2026-10-19"
  }
}
