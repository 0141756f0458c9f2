recipe "too-warm" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" {
    weight = "22 oz"
  }
  mold "pillar-3x6" {
    wick = "flat-braid-24"
  }
  step "seal wick hole" { with = "rubber-plug" }
  step "melt" {
    to   = "250 °F"
#          ^^^^^^^^ heat-above-ceiling must
    over = "water bath"
  }
  step "pour" {
    at    = "168 to 190 °F"
#           ^^^^^^^^^^^^^^^ pour-too-hot should
    leave = "3/8 in"
  }
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h"
    at    = "85 °F"
#           ^^^^^^^ temperature-scale-doubtful must
  }
  step "unmold" { after = "14 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}
