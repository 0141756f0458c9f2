wick "flat-braid-24" {
  title        = "Flat braid, 24 ply"
  construction = "flat braid"
  core         = "none"
  burns        = "2.75 to 3.25 in"
  families     = ["paraffin", "stearin"]
  trim         = "1/4 in"
  tab          = false
}

wick "cored-cotton-44" {
  title        = "Cored, cotton, for jars"
  construction = "cored"
  core         = "cotton"
  burns        = "2.6 to 3.1 in"
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

# Kept in a drawer to show what not to use.
wick "old-lead-core" {
  title        = "Old lead-cored wick"
  construction = "cored"
  core         = "lead"
  burns        = "2.5 to 3 in"
  families     = ["paraffin", "soy"]
  trim         = "1/4 in"
  tab          = true
  lead_at_most = "99 %"
}
