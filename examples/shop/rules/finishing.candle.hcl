# From the mold to the shelf.

rule "a-day-on-the-rack" {
  title    = "Nothing cures for less than a day"
  about    = "cure"
  require  = cure.for >= amount("24 h")
  level    = "should"
  point_at = cure.for
  message  = "It cures for ${show(cure.for)}; less than a day on the rack and the wick still smells of the pour."
  because  = "Candles sold the same evening come back: the scent has not settled and the top is still soft."
  rests_on = ["sweating-jars"]

  sound {
    recipe "rested" {
      step "cure" { for = "3 days" }
    }
  }

  faulty {
    recipe "rushed" {
      step "cure" { for = "6 h" }
    }
  }
}

rule "wooden-wicks-short" {
  title    = "Wooden wicks are trimmed short"
  about    = "trim_wick"
  when     = container.wick.construction == "wooden"
  require  = trim_wick.to <= amount("3/16 in")
  level    = "should"
  point_at = trim_wick.to
  message  = "A wooden wick is left ${show(trim_wick.to)} long; above 3/16 in it flares at the first lighting."
  because  = "A long wooden wick takes the flame along its whole edge."
  rests_on = ["wooden-wick-trim"]

  set "trim the wooden wick to 3/16 in" {
    what = trim_wick.to
    to   = amount("3/16 in")
  }

  sound {
    recipe "short" {
      container "tumbler-10" { wick = "wooden-half-inch" }
      step "trim wick" { to = "3/16 in" }
    }
  }

  faulty {
    recipe "long" {
      container "tumbler-10" { wick = "wooden-half-inch" }
      step "trim wick" { to = "1/4 in" }
    }
  }
}

rule "gel-poured-hot" {
  title    = "Gel is poured hot enough for its bubbles to rise"
  about    = "pour"
  when     = wax.family == "gel"
  require  = pour.at >= amount("188 °F")
  level    = "should"
  point_at = pour.at
  message  = "Gel is poured at ${show(pour.at)}; below 188 °F the bubbles stay where they are."
  because  = "Customers send back gel with a veil of bubbles. The pot is warmed again, slowly, and never above what the sheet allows."
  rests_on = ["bubbles-in-gel"]

  sound {
    recipe "clear" {
      wax "clearwater-gel" { weight = "1 kg" }
      step "pour" { at = "190 °F" }
    }
  }

  faulty {
    recipe "veiled" {
      wax "clearwater-gel" { weight = "1 kg" }
      step "pour" { at = "186 °F" }
    }
  }
}
