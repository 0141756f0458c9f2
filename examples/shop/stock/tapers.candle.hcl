taper "taper-10" {
  title    = "Dipped taper, 7/8 × 10 in"
  diameter = "7/8 in"
  length   = "10 in"
}
