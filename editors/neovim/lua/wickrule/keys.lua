-- The keys in recipe files: those that newer versions of Neovim have for every
-- language server, in the older ones too, and one for the line above a recipe.
local M = {}

function M.set(buffer)
  local function key(mode, keys, act, what)
    vim.keymap.set(mode, keys, act, { buffer = buffer, desc = what })
  end
  key("n", "K", vim.lsp.buf.hover, "what stands here")
  key("n", "gd", vim.lsp.buf.definition, "where it is written")
  key({ "n", "x" }, "gra", vim.lsp.buf.code_action, "what can be done here")
  key("n", "grn", vim.lsp.buf.rename, "rename it everywhere")
  key("n", "grr", vim.lsp.buf.references, "where it is used")
  key("n", "grl", vim.lsp.codelens.run, "act on the line above a recipe")
  key("i", "<C-s>", vim.lsp.buf.signature_help, "what the function takes")
end

return M
