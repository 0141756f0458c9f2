# Hot wax finds every hole. The plug goes in before the first pour, and holds
# to its heat.

seal "barely-enough" {
  title    = "Plug for cooler waxes"
  kind     = "plug"
  holds_to = "80 °C"
}

seal "just-enough" {
  title    = "Plug for this wax"
  kind     = "plug"
  holds_to = "182 °F"
}

recipe "never-sealed" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "22 oz" }
  mold "pillar-3x6" { wick = "flat-braid-24" }
# ^^^^^^^^^^^^^^^^^ wick-hole-unsealed must
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
}

recipe "sealed-late" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "22 oz" }
  mold "pillar-3x6" { wick = "flat-braid-24" }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "seal wick hole" { with = "rubber-plug" }
# ^^^^^^^^^^^^^^^^^^^^^ wick-hole-sealed-late must
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h"
    at    = "182 °F"
  }
  step "unmold" { after = "14 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}

recipe "glued" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "22 oz" }
  mold "pillar-3x6" { wick = "flat-braid-24" }
  step "seal wick hole" { /* good to 66 °C */ with = "tab-glue" }
#                                                    ^^^^^^^^^^ seal-too-weak must
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
}

recipe "holds-the-first-pour" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "22 oz" }
  mold "pillar-3x6" { wick = "flat-braid-24" }
  step "seal wick hole" { with = "barely-enough" }
#                                ^^^^^^^^^^^^^^^ seal-too-weak should
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
}

recipe "holds-to-the-degree" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "22 oz" }
  mold "pillar-3x6" { wick = "flat-braid-24" }
  step "seal wick hole" { with = "just-enough" }
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
}

recipe "weakest-of-two" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "22 oz" }
  mold "pillar-3x6" { wick = "flat-braid-24" }
  step "seal wick hole" { with = ["rubber-plug", "tab-glue"] }
#                                                ^^^^^^^^^^ seal-too-weak must
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
}
