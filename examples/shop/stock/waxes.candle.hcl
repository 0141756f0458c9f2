# Paraffins.

wax "northlight-pillar" {
  title            = "Northlight paraffin, pillar grade"
  family           = "paraffin"
  suits            = ["pillar", "votive"]
  melt_to          = "180 to 190 °F"
  pour_at          = "168 to 182 °F"
  add_fragrance_at = "175 to 188 °F"
  congeals_at      = "140 °F"
  never_above      = "240 °F"
  flash_point      = "450 °F"
  fragrance_limit  = "6 % of wax"
  density          = "0.91 g/mL"
  shrinkage        = "12 %"
  cure             = "1 to 3 days"
  conductivity     = "0.24 W/mK"
  heat_capacity    = "2.2 kJ/kgK"
  latent_heat      = "200 kJ/kg"
  source           = "supplier's sheet, 2026-03"
}

wax "pierhead-container" {
  title            = "Pierhead paraffin, container grade"
  family           = "paraffin"
  suits            = ["container", "tealight", "melt"]
  melt_to          = "175 to 190 °F"
  pour_at          = "160 to 175 °F"
  add_fragrance_at = "175 to 186 °F"
  congeals_at      = "125 °F"
  never_above      = "200 °F"
  flash_point      = "420 °F"
  fragrance_limit  = "9 % of wax"
  density          = "0.89 g/mL"
  shrinkage        = "10 %"
  cure             = "1 to 3 days"
  conductivity     = "0.23 W/mK"
  heat_capacity    = "2.2 kJ/kgK"
  latent_heat      = "190 kJ/kg"
  source           = "supplier's sheet, 2026-03"
}

wax "ropewalk-dipping" {
  title            = "Ropewalk paraffin, dipping grade"
  family           = "paraffin"
  suits            = ["taper"]
  melt_to          = "160 to 175 °F"
  pour_at          = "155 to 165 °F"
  add_fragrance_at = "158 to 165 °F"
  congeals_at      = "140 °F"
  never_above      = "200 °F"
  flash_point      = "420 °F"
  fragrance_limit  = "2 % of wax"
  density          = "0.91 g/mL"
  shrinkage        = "12 %"
  cure             = "1 to 3 days"
  conductivity     = "0.24 W/mK"
  heat_capacity    = "2.2 kJ/kgK"
  latent_heat      = "200 kJ/kg"
  source           = "supplier's sheet, 2026-02"
}

# Vegetable waxes.

wax "millrace-soy" {
  title            = "Millrace soy, container grade"
  family           = "soy"
  suits            = ["container", "tealight"]
  melt_to          = "170 to 182 °F"
  pour_at          = "130 to 145 °F"
  add_fragrance_at = "165 to 180 °F"
  congeals_at      = "114 °F"
  never_above      = "185 °F"
  flash_point      = "440 °F"
  fragrance_limit  = "10 % of wax"
  density          = "0.91 g/mL"
  shrinkage        = "6 %"
  cure             = "7 to 14 days"
  conductivity     = "0.22 W/mK"
  heat_capacity    = "2.0 kJ/kgK"
  latent_heat      = "120 kJ/kg"
  source           = "supplier's sheet, 2026-04"
}

wax "millrace-pillar" {
  title            = "Millrace soy, pillar blend"
  family           = "soy"
  suits            = ["pillar", "votive", "melt"]
  melt_to          = "175 to 188 °F"
  pour_at          = "160 to 174 °F"
  add_fragrance_at = "170 to 184 °F"
  congeals_at      = "138 °F"
  never_above      = "194 °F"
  flash_point      = "430 °F"
  fragrance_limit  = "6 % of wax"
  density          = "0.92 g/mL"
  shrinkage        = "5 %"
  cure             = "7 to 14 days"
  conductivity     = "0.22 W/mK"
  heat_capacity    = "2.0 kJ/kgK"
  latent_heat      = "130 kJ/kg"
  source           = "supplier's sheet, 2026-04"
}

wax "sandbar-palm" {
  title            = "Sandbar palm, crystal pillar grade"
  family           = "palm"
  suits            = ["pillar", "votive"]
  melt_to          = "200 to 208 °F"
  pour_at          = "192 to 204 °F"
  add_fragrance_at = "196 to 206 °F"
  congeals_at      = "138 °F"
  never_above      = "212 °F"
  flash_point      = "430 °F"
  fragrance_limit  = "5 % of wax"
  density          = "0.93 g/mL"
  shrinkage        = "8 %"
  cure             = "3 to 7 days"
  conductivity     = "0.22 W/mK"
  heat_capacity    = "2.0 kJ/kgK"
  latent_heat      = "140 kJ/kg"
  source           = "supplier's sheet, 2026-02"
}

wax "lagoon-coconut" {
  title            = "Lagoon coconut blend"
  family           = "coconut"
  suits            = ["container", "tealight"]
  melt_to          = "165 to 178 °F"
  pour_at          = "132 to 150 °F"
  add_fragrance_at = "155 to 172 °F"
  congeals_at      = "108 °F"
  never_above      = "185 °F"
  flash_point      = "420 °F"
  fragrance_limit  = "10 % of wax"
  density          = "0.90 g/mL"
  shrinkage        = "5 %"
  cure             = "7 to 14 days"
  conductivity     = "0.21 W/mK"
  heat_capacity    = "2.1 kJ/kgK"
  latent_heat      = "115 kJ/kg"
  source           = "supplier's sheet, 2026-05"
}

wax "headland-rapeseed" {
  title            = "Headland rapeseed, container grade"
  family           = "rapeseed"
  suits            = ["container", "tealight"]
  melt_to          = "165 to 180 °F"
  pour_at          = "128 to 145 °F"
  add_fragrance_at = "160 to 175 °F"
  congeals_at      = "113 °F"
  never_above      = "185 °F"
  flash_point      = "430 °F"
  fragrance_limit  = "8 % of wax"
  density          = "0.91 g/mL"
  shrinkage        = "6 %"
  cure             = "7 to 14 days"
  conductivity     = "0.21 W/mK"
  heat_capacity    = "2.0 kJ/kgK"
  latent_heat      = "120 kJ/kg"
  source           = "supplier's sheet, 2026-05"
}

# Beeswax, stearin, gel.

wax "clover-beeswax" {
  title            = "Clover beeswax, filtered"
  family           = "beeswax"
  suits            = ["pillar", "container", "votive", "taper", "tealight"]
  melt_to          = "165 to 178 °F"
  pour_at          = "158 to 167 °F"
  add_fragrance_at = "160 to 167 °F"
  congeals_at      = "145 °F"
  never_above      = "185 °F"
  flash_point      = "400 °F"
  fragrance_limit  = "4 % of wax"
  density          = "0.96 g/mL"
  shrinkage        = "10 %"
  cure             = "1 to 3 days"
  conductivity     = "0.25 W/mK"
  heat_capacity    = "2.5 kJ/kgK"
  latent_heat      = "170 kJ/kg"
  source           = "supplier's sheet, 2026-01"
}

wax "frostfield-stearin" {
  title            = "Frostfield vegetable stearin"
  family           = "stearin"
  suits            = ["pillar", "taper"]
  melt_to          = "175 to 190 °F"
  pour_at          = "165 to 180 °F"
  add_fragrance_at = "170 to 186 °F"
  congeals_at      = "136 °F"
  never_above      = "203 °F"
  flash_point      = "390 °F"
  fragrance_limit  = "4 % of wax"
  density          = "0.95 g/mL"
  shrinkage        = "10 %"
  cure             = "3 to 7 days"
  conductivity     = "0.29 W/mK"
  heat_capacity    = "2.0 kJ/kgK"
  latent_heat      = "200 kJ/kg"
  source           = "supplier's sheet, 2026-02"
}

wax "clearwater-gel" {
  title            = "Clearwater candle gel"
  family           = "gel"
  suits            = ["container"]
  melt_to          = "195 to 208 °F"
  pour_at          = "185 to 203 °F"
  add_fragrance_at = "190 to 205 °F"
  congeals_at      = "158 °F"
  never_above      = "221 °F"
  flash_point      = "400 °F"
  fragrance_limit  = "4 % of wax"
  density          = "0.86 g/mL"
  shrinkage        = "5 %"
  cure             = "1 to 3 days"
  conductivity     = "0.17 W/mK"
  heat_capacity    = "2.2 kJ/kgK"
  latent_heat      = "100 kJ/kg"
  source           = "supplier's sheet, 2026-05"
}

# Blended here. The figures are our own, tested on the blend and not worked out from its parts.

wax "quay-votive" {
  title            = "Quay votive blend"
  family           = "blend"
  suits            = ["votive", "pillar"]
  melt_to          = "178 to 190 °F"
  pour_at          = "165 to 180 °F"
  add_fragrance_at = "172 to 186 °F"
  congeals_at      = "138 °F"
  never_above      = "203 °F"
  flash_point      = "390 °F"
  fragrance_limit  = "5 % of wax"
  density          = "0.92 g/mL"
  shrinkage        = "11 %"
  cure             = "1 to 3 days"
  conductivity     = "0.25 W/mK"
  heat_capacity    = "2.2 kJ/kgK"
  latent_heat      = "200 kJ/kg"
  source           = "our own trials, 2026-05"

  part "northlight-pillar" {
    share = "80 %"
  }

  part "frostfield-stearin" {
    share = "20 %"
  }
}
