-- Where things are on disk.
local M = {}

-- root is the folder of the shop that a file belongs to: the nearest above it
-- with a shop file, else the file's own.
function M.root(path)
  local own = vim.fn.fnamemodify(path, ":p:h")
  local folder = own
  while vim.fn.filereadable(folder .. "/shop.candle.hcl") == 0 do
    local above = vim.fn.fnamemodify(folder, ":h")
    if above == folder then
      return own
    end
    folder = above
  end
  return folder
end

return M
