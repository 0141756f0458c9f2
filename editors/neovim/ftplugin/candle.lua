if vim.b.did_ftplugin then
  return
end
vim.b.did_ftplugin = 1

vim.bo.commentstring = "# %s"
vim.bo.comments = ":#,://"
vim.bo.shiftwidth, vim.bo.softtabstop, vim.bo.expandtab = 2, 2, true
vim.opt_local.formatoptions:remove("t") -- quantities and sentences are not broken apart
vim.b.undo_ftplugin = "setlocal commentstring< comments< shiftwidth< softtabstop< expandtab< formatoptions<"
