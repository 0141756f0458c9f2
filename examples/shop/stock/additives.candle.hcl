additive "stearin" {
  title       = "Stearin"
  usual       = "5 to 10 % of wax"
  density     = "0.93 g/mL"
  flash_point = "385 °F"
  gel_safe    = false
  water_based = false
  components  = "none classified"
  sheet       = "safety data sheet, 2026-02"
}

additive "fade-guard" {
  title       = "Fade guard, for dyed candles"
  usual       = "0.1 to 0.5 % of wax"
  density     = "0.93 g/mL"
  flash_point = "390 °F"
  gel_safe    = false
  water_based = false
  components  = "none classified"
  sheet       = "safety data sheet, 2026-01"
}

additive "hard-crystal" {
  title       = "Hard crystal, a high-melting wax"
  usual       = "0.5 to 2 % of wax"
  density     = "0.93 g/mL"
  flash_point = "430 °F"
  gel_safe    = false
  water_based = false
  components  = "none classified"
  sheet       = "safety data sheet, 2026-01"
}
