# Rules of the shop's own: what cannot be read is told at its very characters,
# and stops no other rule.

  rule "plug-in-hand" {
  title    = "A plug well above the pour"
  about    = "pour"
  when     = mold.seal.kind == "plug"
  require  = mold.seal.holds_to - pour.at >= option.in_hand
  point_at = pour.at
  message  = "${show(mold.seal.holds_to - pour.at)} in hand, ${show(mold.height)} high"

  option "in_hand" {
    is = degrees("20 °F")
  }

  set "lower the pour" {
    what = mold.seal.holds_to
    to   = amount("150 °F")
  }

  sound {
    recipe "cool" {
      mold "pillar-3x6" { count = 1 }
      step "seal wick hole" { with = "rubber-plug" }
      step "pour" { at = "170 °F" }
    }
  }
  faulty {
    recipe "hot" {
      mold "pillar-3x6" { count = 1 }
      step "seal wick hole" { with = "rubber-plug" }
      step "pour" { at = "340 °F" }
    }
  }
}

rule "degrees-and-grams" {
  title    = "A rule of thumb that mixes them up"
  about    = "pour"
  when     = pour.at - amount("10 °F") > melt.to
  require  = batch.total + pour.at > amount("1 kg")
  rests_on = ["bench-in-june"]
}

rule "june-pours" {
  title    = "Pours no hotter than the June trial"
  about    = "pour"
  when     = recipe.room > amount("90 °F")
  require  = pour.at <= amount("150 °F")
  rests_on = ["bench-in-june"]

  sound {
    recipe "cool-in-june" {
      room = "95 °F"
      step "pour" { at = "150.5 °F" }
    }
  }
  faulty {
    recipe "hot-in-june" {
      room = "95 °F"
      step "pour" { at = "151 °F" }
    }
    recipe "not-hot-in-june" {
      step "melt" { to = "151 °F" }
    }
  }
}

trial "bench-in-june" {
  question = "How cool may a pour be in June?"
  date     = "2026-06-12"
  outcome  = "open"
}
