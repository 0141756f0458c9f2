# What goes into the wax.

rule "dye-the-scale-can-weigh" {
  title    = "No less dye than the scale can weigh"
  about    = "dye"
  when     = !dye.by_eye && batch.wax_weight >= amount("1 kg")
  require  = dye.weight >= amount("0.2 g")
  level    = "consider"
  point_at = dye.weight
  message  = "${dye.title} comes to ${show(dye.weight)}; below 0.2 g our scale guesses."
  because  = "The small scale steps by 0.1 g. Under 0.2 g one step more or less is half the color again."
  rests_on = ["small-scale"]

  sound {
    recipe "red" {
      wax "northlight-pillar" { weight = "1 kg" }
      dye "madder" { weight = "0.6 g" }
    }
  }

  faulty {
    recipe "faint" {
      wax "northlight-pillar" { weight = "1 kg" }
      dye "madder" { weight = "0.1 g" }
    }
  }
}

rule "strong-loads-stirred-longer" {
  title    = "A strong load is stirred for at least two minutes"
  about    = "add_fragrance"
  when     = batch.fragrance_of_wax >= amount("7 % of wax")
  require  = add_fragrance.stir >= amount("2 min")
  level    = "should"
  point_at = add_fragrance.stir
  message  = "${show(batch.fragrance_of_wax)} of fragrance is stirred for ${show(add_fragrance.stir)}; with 7 % of wax or more we stir two minutes."
  because  = "What is not bound sinks to the bottom of the pot, and the last jar of the batch sweats oil."
  rests_on = ["sweating-jars"]

  sound {
    recipe "well-stirred" {
      wax "millrace-soy" { weight = "1 kg" }
      fragrance "tide-and-thyme" { load = "8 % of wax" }
      step "add fragrance" { stir = "3 min" }
    }
  }

  faulty {
    recipe "hasty" {
      wax "millrace-soy" { weight = "1 kg" }
      fragrance "tide-and-thyme" { load = "8 % of wax" }
      step "add fragrance" { stir = "1 min" }
    }
  }
}
