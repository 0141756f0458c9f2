topping "sea-lavender" {
  title = "Dried sea lavender"
  kind  = "botanical"
}
