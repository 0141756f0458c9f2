# What has a wick is lit, whatever is said of melts.
recipe "lit-melt" {
  made_for = "own use"
  pot      = "melter-8"
  wax "pierhead-container" {
    weight = "1 lb 12 oz"
  }
  container "clamshell-6" {
#           ^^^^^^^^^^^^^ container-not-for-candles must
    count = 10
    wick  = "cored-cotton-44"
#           ^^^^^^^^^^^^^^^^^ wick-in-melt must
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" { to = "182 °F" }
  step "pour" { at = "162 °F" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}

recipe "jar-said-to-be-melt" {
  makes    = "melt"
  made_for = "own use"
  pot      = "melter-8"
  wax "pierhead-container" {
    weight = "2 lb 13 oz"
  }
  container "tumbler-10" {
    count = 6
    fill  = "250 mL"
  }
  step "set wick" {
    wick = "cored-cotton-44"
#          ^^^^^^^^^^^^^^^^^ wick-in-melt must
    with = "tab-sticker"
  }
  step "warm container" { to = "110 °F" }
  step "melt" { to = "182 °F" }
  step "pour" { at = "162 °F" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}
