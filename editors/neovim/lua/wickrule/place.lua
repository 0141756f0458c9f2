-- What stands at the cursor.
local client = require("wickrule.client")
local M = {}

-- recipe finds the key of the recipe that the cursor is in, else of the first
-- one in the buffer, and hands it to found; nil where there is none. Recipes
-- of a rule's examples do not count: they are no recipes of the shop.
function M.recipe(server, buffer, found)
  local line = vim.api.nvim_win_get_cursor(0)[1] - 1
  local params = { textDocument = { uri = vim.uri_from_bufnr(buffer) } }
  client.request(server, "textDocument/documentSymbol", params, buffer, function(symbols)
    local first
    for _, symbol in ipairs(symbols or {}) do
      local header = vim.api.nvim_buf_get_lines(buffer, symbol.range.start.line, symbol.range.start.line + 1, false)[1]
      local key = header:match('^%s*recipe%s+"([^"]+)"')
      if key and symbol.range.start.line <= line and line <= symbol.range["end"].line then
        return found(key)
      end
      first = first or key
    end
    found(first)
  end)
end

-- rule is the rule of the finding at the cursor, the one on the fewest
-- characters; else of one on that line; else nil.
function M.rule()
  local cursor = vim.api.nvim_win_get_cursor(0)
  local line, column = cursor[1] - 1, cursor[2]
  local best, size, beside
  for _, d in ipairs(vim.diagnostic.get(0)) do
    if d.source == "wickrule" and type(d.code) == "string" and d.lnum <= line and line <= d.end_lnum then
      beside = beside or d.code
      local after_start = line > d.lnum or column >= d.col
      local before_end = line < d.end_lnum or column < d.end_col
      local long = (d.end_lnum - d.lnum) * 10000 + d.end_col - d.col
      if after_start and before_end and (not size or long < size) then
        best, size = d.code, long
      end
    end
  end
  return best or beside
end

return M
