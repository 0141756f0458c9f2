dye "madder" {
  title       = "Madder red"
  color       = "#b5473c"
  limit       = "0.1 % of wax"
  piece       = "0.6 g"
  density     = "0.94 g/mL"
  flash_point = "400 °F"
  gel_safe    = true
  water_based = false
  components  = "none classified"
  sheet       = "safety data sheet, 2026-01"
}

dye "deep-water" {
  title       = "Deep water blue"
  color       = "#234f78"
  limit       = "0.1 % of wax"
  drop        = "0.03 g"
  density     = "0.94 g/mL"
  flash_point = "400 °F"
  gel_safe    = true
  water_based = false
  components  = "none classified"
  sheet       = "safety data sheet, 2026-01"
}

dye "gorse-yellow" {
  title       = "Gorse yellow"
  color       = "#e2b53a"
  limit       = "0.1 % of wax"
  drop        = "0.03 g"
  density     = "0.94 g/mL"
  flash_point = "400 °F"
  gel_safe    = true
  water_based = false
  components  = "none classified"
  sheet       = "safety data sheet, 2026-01"
}

dye "sea-glass" {
  title       = "Sea glass green"
  color       = "#6fa58c"
  limit       = "0.1 % of wax"
  piece       = "0.5 g"
  density     = "0.94 g/mL"
  flash_point = "400 °F"
  gel_safe    = true
  water_based = false
  components  = "none classified"
  sheet       = "safety data sheet, 2026-01"
}

dye "pewter" {
  title       = "Pewter gray"
  color       = "#5c666d"
  limit       = "0.08 % of wax"
  piece       = "0.5 g"
  density     = "0.94 g/mL"
  flash_point = "400 °F"
  gel_safe    = true
  water_based = false
  components  = "none classified"
  sheet       = "safety data sheet, 2026-01"
}
