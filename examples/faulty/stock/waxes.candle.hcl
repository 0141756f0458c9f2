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
