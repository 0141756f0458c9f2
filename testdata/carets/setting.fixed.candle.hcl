recipe "open-hole" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" {
    weight = "22 oz"
  }
  mold "pillar-3x6" {
    wick = "flat-braid-24"
  }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "seal wick hole" { with = "rubber-plug" }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h"
    at    = "170 °F"
  }
  step "unmold" { after = "14 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}

recipe "topped-up-at-once" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" {
    weight = "340 g"
  }
  mold "votive-small" {
    count = 6
    wick  = "cored-zinc-34"
  }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "pour" {
    at    = "176 °F"
    leave = "1/4 in"
  }
  step "second pour" {
    after = "3 min"
    at    = "182 °F"
  }
  step "unmold" { after = "6 h" }
  step "attach label" { label = "us-votive" }
}
