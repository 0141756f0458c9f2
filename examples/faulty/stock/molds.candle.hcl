mold "pillar-3x6" {
  title     = "Round pillar 3 × 6 in"
  shape     = "cylinder"
  diameter  = "3 in"
  height    = "6 in"
  wick_hole = true
  material  = "metal"
}

mold "beacon-cone" {
  title      = "Beacon cone 3 × 7 in"
  shape      = "cone"
  diameter   = "3 in"
  height     = "7 in"
  wick_hole  = true
  material   = "acrylic"
  softens_at = "212 °F"
}
