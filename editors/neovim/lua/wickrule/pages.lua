-- Markdown that the server makes, in a window of its own. Each page has one
-- window: what is asked for again comes to stand where it stood.
local M = {}

local function named(name)
  for _, buffer in ipairs(vim.api.nvim_list_bufs()) do
    if vim.api.nvim_buf_get_name(buffer) == name then
      return buffer
    end
  end
  local buffer = vim.api.nvim_create_buf(false, true)
  vim.api.nvim_buf_set_name(buffer, name)
  return buffer
end

function M.show(name, markdown)
  local buffer = named("wickrule://" .. name)
  vim.bo[buffer].modifiable = true
  vim.api.nvim_buf_set_lines(buffer, 0, -1, false, vim.split(vim.trim(markdown), "\n"))
  vim.bo[buffer].modifiable = false
  vim.bo[buffer].bufhidden = "wipe"
  local window = vim.fn.bufwinid(buffer)
  if window ~= -1 then
    vim.api.nvim_set_current_win(window)
  else
    vim.cmd("split")
    vim.api.nvim_win_set_buf(0, buffer)
  end
  vim.bo[buffer].filetype = "markdown"
  vim.wo.wrap, vim.wo.linebreak, vim.wo.number, vim.wo.relativenumber, vim.wo.spell = true, true, false, false, false
  vim.keymap.set("n", "q", "<Cmd>close<CR>", { buffer = buffer, desc = "close this page" })
end

return M
