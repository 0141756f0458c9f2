  dye "slate" {
# ^^^^^^^^^^^ unused-stock consider
  drop  = 0.03
#         ^^^^ unit-missing must
  limmit = "0.1 % of wax"
# ^^^^^^ unknown-attribute must
  color = "#6a7077"
}

  dye "chalk" { limit = "°C" }
# ^^^^^^^^^^^ unused-stock consider
#                        ^^ quantity-unreadable must
