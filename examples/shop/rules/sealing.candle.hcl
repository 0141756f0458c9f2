# What keeps the wax where it is poured.

rule "fresh-putty-for-hot-pours" {
  title    = "Putty only well below the temperature it holds to"
  about    = "mold"
  when     = mold.seal.kind == "putty"
  require  = pour.at <= mold.seal.holds_to - option.in_hand
  level    = "should"
  point_at = pour.at
  message  = "The pour is ${show(pour.at)}; this putty holds to ${show(mold.seal.holds_to)}, and we keep ${show(option.in_hand)} in hand."
  because  = "Putty that softens lets the mold drain onto the bench, and a ball that has been used before softens sooner."
  rests_on = ["putty-reuse"]

  option "in_hand" {
    is    = degrees("10 °F")
    title = "What we keep in hand"
  }

  set "pour well below what the putty bears" {
    what = pour.at
    to   = mold.seal.holds_to - option.in_hand
  }

  sound {
    recipe "cool-pour" {
      mold "pillar-3x6" { count = 1 }
      step "seal wick hole" { with = "wick-putty" }
      step "pour" { at = "182 °F" }
    }
  }

  faulty {
    recipe "hot-pour" {
      mold "pillar-3x6" { count = 1 }
      step "seal wick hole" { with = "wick-putty" }
      step "pour" { at = "212 °F" }
    }
  }
}

rule "tab-glue-in-hand" {
  title    = "Hot-melt glue under a tab only well below what it holds to"
  about    = "container"
  when     = container.seal.kind == "hot-melt glue"
  require  = pour.at <= container.seal.holds_to - degrees("8 °F")
  level    = "should"
  point_at = pour.at
  message  = "The pour is ${show(pour.at)}; ${container.seal.title} holds to ${show(container.seal.holds_to)}, and we keep 8 °F in hand."
  because  = "Glue goes soft before it lets go: the wick leans, and nobody sees it until the jar is lit."
  rests_on = ["glue-under-tabs"]

  sound {
    recipe "cool-jar" {
      container "tumbler-10" { count = 1 }
      step "set wick" { with = "tab-glue" }
      step "pour" { at = "140 °F" }
    }
  }

  faulty {
    recipe "warm-jar" {
      container "tumbler-10" { count = 1 }
      step "set wick" { with = "tab-glue" }
      step "pour" { at = "143 °F" }
    }
  }
}
