# A wick is chosen for the width of one candle and for its wax. The supplier's
# table says where to begin; test burns say whether it was right.
wick "cored-cotton" {
  title        = "Cored cotton, for jars"
  construction = "cored"
  core         = "cotton"
  burns        = "66 to 79 mm"
  families     = ["soy", "paraffin"]
  trim         = "6 mm"
  tab          = true
}

# What holds the wick's tab to the bottom of the jar.
seal "tab-sticker" {
  title    = "Wick tab sticker, heat rated"
  kind     = "sticker"
  holds_to = "104 °C"
}
