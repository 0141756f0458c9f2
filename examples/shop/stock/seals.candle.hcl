# For wick holes.

seal "rubber-plug" {
  title    = "Silicone rubber plug"
  kind     = "plug"
  holds_to = "350 °F"
}

seal "wick-putty" {
  title    = "Wick putty"
  kind     = "putty"
  holds_to = "220 °F"
}

seal "screw-and-putty" {
  title    = "Wick screw bedded in putty"
  kind     = "screw"
  holds_to = "220 °F"
}

seal "foil-tape" {
  title    = "Aluminum foil tape"
  kind     = "tape"
  holds_to = "250 °F"
}

# For wick tabs.

seal "tab-sticker" {
  title    = "Wick tab sticker, heat rated"
  kind     = "sticker"
  holds_to = "220 °F"
}

seal "tab-glue" {
  title    = "Hot-melt glue, rated"
  kind     = "hot-melt glue"
  holds_to = "150 °F"
}
