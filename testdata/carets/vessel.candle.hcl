  recipe "wrong-wax" {
# ^^^^^^^^^^^^^^^^^^ test-burn-missing consider
  made_for = "class"
  pot      = "pitcher-4"
  wax "northlight-pillar" {
#     ^^^^^^^^^^^^^^^^^^^ wax-not-for-container should
    weight = "450 g"
  }
  container "tumbler-10" {
    count = 2
    wick  = "flat-braid-24"
#           ^^^^^^^^^^^^^^^ wick-tab-missing should
    fill  = "250 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "184 °F"
    over = "water bath"
  }
  step "pour" { at = "172 °F" }
#                    ^^^^^^^^ glass-too-cold-for-pour should
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}
