# A wick is chosen for the width of one candle and for its wax. The supplier's
# table says where to begin; test burns say whether it was right.
wick "cored-cotton" {
  title        = "Cored cotton, for jars"
  construction = "cored"
  core         = "cotton"
  burns        = "2.6 to 3.1 in"
  families     = ["soy", "paraffin"]
  trim         = "1/4 in"
  tab          = true
}

# What holds the wick's tab to the bottom of the jar.
seal "tab-sticker" {
  title    = "Wick tab sticker, heat rated"
  kind     = "sticker"
  holds_to = "220 °F"
}
