# At the pot and at the pour.

rule "no-glass-in-a-cold-room" {
  title    = "No glass is poured in a cold room"
  about    = "container"
  when     = container.material == "glass"
  require  = recipe.room >= amount("65 °F")
  level    = "should"
  point_at = recipe.room
  message  = "The room is ${show(recipe.room)}; below 65 °F the wax pulls away from ${container.title}."
  because  = "In a cold room the outside sets at once and shrinks off the glass: wet spots that customers take for leaks."
  rests_on = ["glass-in-winter"]

  sound {
    recipe "mild-day" {
      room = "68 °F"
      container "tumbler-10" { count = 1 }
    }
  }

  faulty {
    recipe "frosty-day" {
      room = "60 °F"
      container "tumbler-10" { count = 1 }
    }
  }
}

rule "beeswax-kept-pale" {
  title    = "Beeswax is not melted hotter than it has to be"
  about    = "melt"
  when     = wax.family == "beeswax"
  require  = melt.to <= amount("178 °F")
  level    = "should"
  point_at = melt.to
  message  = "Beeswax is melted to ${show(melt.to)}; above 178 °F it darkens and loses its scent."
  because  = "Customers buy it for the color and the smell of the hive; both are gone after half an hour too hot."
  rests_on = ["beeswax-color"]

  set "melt beeswax to 178 °F" {
    what = melt.to
    to   = amount("178 °F")
  }

  sound {
    recipe "pale" {
      wax "clover-beeswax" { weight = "1 kg" }
      step "melt" { to = "175 °F" }
    }
  }

  faulty {
    recipe "browned" {
      wax "clover-beeswax" { weight = "1 kg" }
      step "melt" { to = "185 °F" }
    }
  }
}

rule "pot-not-too-full" {
  title    = "A pot is filled to three quarters at most"
  about    = "pot"
  require  = batch.molten <= pot.holds * 0.75
  level    = "should"
  point_at = recipe.pot
  message  = "${show(batch.molten)} of melted wax go into ${pot.title}, which holds ${show(pot.holds)}: we fill it to three quarters."
  because  = "A full pitcher cannot be carried without a spill, and a spill on the plate smokes."
  rests_on = ["pitcher-spills"]

  sound {
    recipe "half-full" {
      pot = "pitcher-4"
      wax "northlight-pillar" { weight = "500 g" }
    }
  }

  faulty {
    recipe "brimming" {
      pot = "pitcher-4"
      wax "northlight-pillar" { weight = "3.4 kg" }
    }
  }
}
