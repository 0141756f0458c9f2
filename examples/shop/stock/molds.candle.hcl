mold "pillar-3x6" {
  title     = "Round pillar 3 × 6 in"
  shape     = "cylinder"
  diameter  = "3 in"
  height    = "6 in"
  wick_hole = true
  material  = "metal"
}

mold "pillar-3x4" {
  title     = "Round pillar 3 × 4 in"
  shape     = "cylinder"
  diameter  = "3 in"
  height    = "4 in"
  wick_hole = true
  material  = "metal"
}

mold "pillar-2x5" {
  title      = "Slim pillar 2 1/4 × 5 in"
  shape      = "cylinder"
  diameter   = "2 1/4 in"
  height     = "5 in"
  wick_hole  = true
  material   = "polycarbonate"
  softens_at = "265 °F"
}

mold "block-3x5" {
  title     = "Square block 3 × 5 in"
  shape     = "block"
  width     = "3 in"
  length    = "3 in"
  height    = "5 in"
  holds     = "735 mL"
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

mold "skep" {
  title      = "Beehive, silicone"
  shape      = "other"
  diameter   = "2 3/4 in"
  height     = "3 1/4 in"
  holds      = "235 mL"
  wick_hole  = false
  material   = "silicone"
  softens_at = "400 °F"
}

mold "votive-small" {
  title     = "Small votive with wick pin"
  makes     = "votive"
  shape     = "cylinder"
  diameter  = "1 1/2 in"
  height    = "2 in"
  wick_hole = false
  material  = "metal"
}
