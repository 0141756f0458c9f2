  dye "slate" {
  drop  = 0.03
  limit = "0.1 % of wax"
  color = "#6a7077"
}

  dye "chalk" { limit = "°C" }
