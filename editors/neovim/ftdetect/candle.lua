-- Recipe files have a file type of their own.
if vim.fn.has("nvim-0.8") == 1 then
  vim.filetype.add({ pattern = { [".*%.candle%.hcl"] = "candle" } })
else
  vim.api.nvim_create_autocmd({ "BufRead", "BufNewFile" }, {
    pattern = "*.candle.hcl",
    callback = function()
      vim.bo.filetype = "candle"
    end,
  })
end
