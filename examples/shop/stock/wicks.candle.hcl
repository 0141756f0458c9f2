# For molds: no tab.

wick "flat-braid-24" {
  title        = "Flat braid, 24 ply"
  construction = "flat braid"
  core         = "none"
  burns        = "2.75 to 3.25 in"
  families     = ["paraffin", "stearin"]
  trim         = "1/4 in"
  tab          = false
}

wick "flat-braid-15" {
  title        = "Flat braid, 15 ply"
  construction = "flat braid"
  core         = "none"
  burns        = "3/4 to 1 in"
  families     = ["paraffin", "stearin", "blend"]
  trim         = "1/4 in"
  tab          = false
}

wick "square-braid-2" {
  title        = "Square braid, medium"
  construction = "square braid"
  core         = "none"
  burns        = "2 to 2.5 in"
  families     = ["palm", "soy", "stearin", "paraffin"]
  trim         = "1/4 in"
  tab          = false
}

wick "square-braid-5" {
  title        = "Square braid, large"
  construction = "square braid"
  core         = "none"
  burns        = "2.5 to 3 in"
  families     = ["beeswax"]
  trim         = "1/4 in"
  tab          = false
}

wick "square-braid-4" {
  title        = "Square braid, wide"
  construction = "square braid"
  core         = "none"
  burns        = "2.75 to 3.5 in"
  families     = ["soy", "palm"]
  trim         = "1/4 in"
  tab          = false
}

# For containers, votives and tealights: crimped to a tab.

wick "cored-cotton-44" {
  title        = "Cored, cotton, for jars"
  construction = "cored"
  core         = "cotton"
  burns        = "2.6 to 3.1 in"
  families     = ["paraffin", "soy", "rapeseed", "coconut"]
  trim         = "1/4 in"
  tab          = true
}

wick "cored-paper-36" {
  title        = "Cored, paper, for wide jars"
  construction = "cored"
  core         = "paper"
  burns        = "2.75 to 3.25 in"
  families     = ["soy", "coconut", "rapeseed"]
  trim         = "1/4 in"
  tab          = true
}

wick "cored-zinc-34" {
  title        = "Cored, zinc, for votives"
  construction = "cored"
  core         = "zinc"
  burns        = "1.4 to 1.75 in"
  families     = ["paraffin", "stearin", "blend"]
  trim         = "1/4 in"
  tab          = true
  lead_at_most = "0.01 %"
}

wick "cored-zinc-51" {
  title        = "Cored, zinc, for gel"
  construction = "cored"
  core         = "zinc"
  burns        = "2.5 to 3 in"
  families     = ["gel"]
  trim         = "1/4 in"
  tab          = true
  lead_at_most = "0.01 %"
}

wick "cored-paper-20" {
  title        = "Cored, paper, for tealights"
  construction = "cored"
  core         = "paper"
  burns        = "1.25 to 1.75 in"
  families     = ["paraffin", "soy", "rapeseed", "coconut"]
  trim         = "1/4 in"
  tab          = true
}

wick "cored-cotton-28" {
  title        = "Cored, cotton, for small glasses"
  construction = "cored"
  core         = "cotton"
  burns        = "1.75 to 2.25 in"
  families     = ["soy", "rapeseed", "coconut"]
  trim         = "1/4 in"
  tab          = true
}

wick "square-braid-6-tab" {
  title        = "Square braid, extra large, tabbed"
  construction = "square braid"
  core         = "none"
  burns        = "2.5 to 3.1 in"
  families     = ["beeswax"]
  trim         = "1/4 in"
  tab          = true
}

wick "wooden-half-inch" {
  title        = "Wooden, half inch wide"
  construction = "wooden"
  core         = "none"
  burns        = "2.6 to 3.1 in"
  families     = ["coconut", "soy"]
  trim         = "3/16 in"
  tab          = true
}
