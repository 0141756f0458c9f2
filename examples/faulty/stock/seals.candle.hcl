seal "rubber-plug" {
  title    = "Silicone rubber plug"
  kind     = "plug"
  holds_to = "350 °F"
}

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

seal "soft-plug" {
  title    = "Natural rubber plug"
  kind     = "plug"
  holds_to = "180 °F"
}
