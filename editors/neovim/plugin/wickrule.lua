-- Wickrule in Neovim 0.7 and newer: `:help wickrule`, `:checkhealth wickrule`.
if vim.g.loaded_wickrule then
  return
end
vim.g.loaded_wickrule = true

require("wickrule.client").enable()
require("wickrule.commands").define()
