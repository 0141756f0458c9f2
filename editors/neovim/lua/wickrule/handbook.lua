-- The handbook of a shop, made by the program and opened in the browser.
local program = require("wickrule.program")
local M = {}

-- page makes the handbook and is the path of a rule's page in it, or of the
-- first page where no rule is given or the rule has none; or nil and why not.
function M.page(root, rule)
  local above = vim.fn.stdpath("cache") .. "/wickrule"
  vim.fn.mkdir(above, "p")
  local into = above .. "/handbook-" .. vim.fn.sha256(root):sub(1, 12)
  local made, trouble = program.lines(root, { "handbook", root, "--into", into })
  if not made then
    return nil, trouble
  end
  for _, kind in ipairs(rule and { "rule", "own" } or {}) do
    local page = ("%s/%s-%s.html"):format(into, kind, rule)
    if vim.fn.filereadable(page) == 1 then
      return page
    end
  end
  return into .. "/index.html"
end

-- open shows a page in the browser. Where it cannot, it returns why.
function M.open(page)
  if vim.ui.open then -- Neovim 0.10
    local _, trouble = vim.ui.open(page)
    return trouble
  end
  for _, opener in ipairs({ "xdg-open", "open", "explorer.exe" }) do
    if vim.fn.executable(opener) == 1 then
      vim.fn.jobstart({ opener, page }, { detach = true })
      return nil
    end
  end
  return "nothing here opens pages"
end

return M
