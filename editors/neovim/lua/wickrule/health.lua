-- :checkhealth wickrule
local program = require("wickrule.program")
local settings = require("wickrule.settings")
local shop = require("wickrule.shop")
local M = {}

-- The words of a report have changed their names since Neovim 0.7.
local function reporter()
  local health = vim.health or require("health")
  return {
    start = health.start or health.report_start,
    ok = health.ok or health.report_ok,
    info = health.info or health.report_info,
    warn = health.warn or health.report_warn,
    error = health.error or health.report_error,
  }
end

local function version(say)
  local have = vim.version()
  local number = ("%d.%d.%d"):format(have.major, have.minor, have.patch)
  if vim.fn.has("nvim-0.7") == 0 then
    say.error(("Neovim %s is too old"):format(number), { "Install Neovim 0.7 or newer" })
  elseif vim.fn.has("nvim-0.10") == 0 then
    say.ok(("Neovim %s: all but figures beside the numbers, which 0.10 and newer show"):format(number))
  else
    say.ok(("Neovim %s"):format(number))
  end
end

local function found(say)
  local path, trouble = program.find()
  if not path then
    say.error(trouble)
    return
  end
  local lines, why = program.lines(vim.fn.getcwd(), { "version" })
  if lines then
    say.ok(("%s: %s"):format(path, table.concat(lines, " ")))
  else
    say.error(("%s does not run: %s"):format(path, why))
  end
end

local function said(say)
  local wanted, troubles = settings.read()
  for _, trouble in ipairs(troubles) do
    say.warn(trouble, { "see :help wickrule-settings" })
  end
  local list = {}
  for name, value in pairs(wanted) do
    table.insert(list, name .. " = " .. vim.inspect(value))
  end
  table.sort(list)
  say.info("settings: " .. table.concat(list, ", "))
end

local function open(say)
  local client = require("wickrule.client")
  local any = false
  for _, buffer in ipairs(vim.api.nvim_list_bufs()) do
    if vim.api.nvim_buf_is_loaded(buffer) and vim.bo[buffer].filetype == "candle" then
      any = true
      local path = vim.api.nvim_buf_get_name(buffer)
      local name = vim.fn.fnamemodify(path, ":~:.")
      local root = shop.root(path)
      local alone = vim.fn.filereadable(root .. "/shop.candle.hcl") == 0
      local of = alone and "no shop.candle.hcl above it: its folder is taken for a shop" or "of the shop in " .. vim.fn.fnamemodify(root, ":~")
      if client.of(buffer) then
        say.ok(("%s has its server; %s"):format(name, of))
      else
        say.error(("%s has no server; %s"):format(name, of), { "put right what is wrong above, then run :Wickrule restart" })
      end
    end
  end
  if not any then
    say.info("no recipe file is open")
  end
end

function M.check()
  local say = reporter()
  say.start("Wickrule")
  version(say)
  found(say)
  said(say)
  open(say)
end

return M
