# The wax holds 6 % of its weight in fragrance, which is 5.66 % of the whole:
# 6 / 106. Each recipe says too much in its own way.

recipe "of-the-whole" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "1.22 kg" }
  fragrance "tide-and-thyme" { load = "6 % of total" }
#                                     ^^^^^^^^^^^^^^ fragrance-over-limit must
  mold "pillar-3x6" {
    count = 2
    wick  = "flat-braid-24"
  }
  step "seal wick hole" { with = "rubber-plug" }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "183 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h 15 min"
    at    = "182 °F"
  }
  step "unmold" { after = "14 h" }
  step "cure" { for = "3 days" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}

recipe "two-bottles" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "1.22 kg" }
  fragrance "tide-and-thyme" { load = "4 % of wax" }
#                                     ^^^^^^^^^^^^ fragrance-over-limit must
  fragrance "rain-on-slate" { weight = "36.6 g" }
  mold "pillar-3x6" {
    count = 2
    wick  = "flat-braid-24"
  }
  step "seal wick hole" { with = "rubber-plug" }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "183 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h 15 min"
    at    = "182 °F"
  }
  step "unmold" { after = "14 h" }
  step "cure" { for = "3 days" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}

# 3 oz in 50 oz is 6 % to the last digit: at the limit is within it, and near
# it is only said.
recipe "just-within" {
  made_for = "own use"
  pot      = "pitcher-4"
  wax "northlight-pillar" { weight = "42 oz" }
  fragrance "tide-and-thyme" { weight = "2.52 oz" }
#                                       ^^^^^^^^^ fragrance-near-limit consider
  mold "pillar-3x6" {
    count = 2
    wick  = "flat-braid-24"
  }
  step "seal wick hole" { with = "rubber-plug" }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "183 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "relief holes" { after = "2 h" }
  step "second pour" {
    after = "1 h 15 min"
    at    = "182 °F"
  }
  step "unmold" { after = "14 h" }
  step "cure" { for = "3 days" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-base" }
}
