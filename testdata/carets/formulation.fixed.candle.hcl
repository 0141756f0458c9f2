recipe "too-much" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" {
    weight = "1.5 kg"
  }
  fragrance "tide-and-thyme" {
    load = "0.96 oz per lb"
  }
  dye "madder" {
    amount = "to shade"
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
  step "add dye" { dye = "madder" }
  step "add fragrance" {
    at   = "183 °F"
    stir = "60 s"
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
