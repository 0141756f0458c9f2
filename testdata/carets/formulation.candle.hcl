recipe "too-much" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" {
    weight = "1.5 kg"
#            ^^^^^^^^ batch-left-over should
  }
  fragrance "tide-and-thyme" {
    load = "1 oz per lb"
#          ^^^^^^^^^^^^^ fragrance-over-limit must
  }
  dye "madder" {
    amount = "to shade"
#            ^^^^^^^^^^ dye-by-eye consider
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
#          ^^^^^^ stir-too-short consider
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
