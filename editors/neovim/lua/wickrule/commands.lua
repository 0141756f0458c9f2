-- The command :Wickrule WORD, whose words are those of the program where it has
-- them.
local client = require("wickrule.client")
local handbook = require("wickrule.handbook")
local pages = require("wickrule.pages")
local place = require("wickrule.place")
local program = require("wickrule.program")
local shop = require("wickrule.shop")
local M = {}

local function complain(text)
  vim.notify(text, vim.log.levels.ERROR)
end

-- here is the buffer in front and its server, or nil where it has none.
local function here()
  local buffer = vim.api.nvim_get_current_buf()
  local server = client.of(buffer)
  if server then
    return buffer, server
  end
  if vim.bo[buffer].filetype ~= "candle" then
    complain("Open a recipe file first: its name ends in .candle.hcl.")
  else
    complain("This file has no language server: :checkhealth wickrule tells why.")
  end
end

-- known is what the program would complete after a verb in this shop.
local function known(verb)
  return program.lines(shop.root(vim.api.nvim_buf_get_name(0)), { "completions", "words", verb }) or {}
end

-- rules are the names of all rules, the shop's own first.
local function rules()
  return vim.list_extend(known("prove"), known("explain"))
end

local words = {}

words.sheet = {
  offers = function()
    return known("sheet")
  end,
  run = function(recipe)
    local buffer, server = here()
    if not buffer then
      return
    end
    local uri = vim.uri_from_bufnr(buffer)
    local function show(key)
      if not key then
        return complain("There is no recipe in this file.")
      end
      client.execute(server, "wickrule.sheet", { uri, key }, buffer, function(sheet)
        pages.show("batch sheet/" .. key, sheet)
      end)
    end
    if recipe then
      show(recipe)
    else
      place.recipe(server, buffer, show)
    end
  end,
}

words.explain = {
  offers = rules,
  run = function(rule)
    local buffer, server = here()
    if not buffer then
      return
    end
    rule = rule or place.rule()
    if not rule then
      return complain("There is no finding here: put the cursor on one, or name a rule.")
    end
    client.execute(server, "wickrule.explain", { rule }, buffer, function(text)
      pages.show("rule/" .. rule, text)
    end)
  end,
}

words.handbook = {
  offers = rules,
  run = function(rule)
    local page, trouble = handbook.page(shop.root(vim.api.nvim_buf_get_name(0)), rule or place.rule())
    trouble = not page and trouble or page and handbook.open(page)
    if trouble then
      complain(trouble .. (page and ": open " .. page .. " yourself" or ""))
    end
  end,
}

words.mend = {
  offers = function()
    return { "file", "shop" }
  end,
  run = function(what)
    local commands = { file = "wickrule.mendFile", shop = "wickrule.mendShop" }
    local command = commands[what or "file"]
    if not command then
      return complain((":Wickrule mend takes file or shop, not %s."):format(what))
    end
    local buffer, server = here()
    if buffer then
      client.execute(server, command, { vim.uri_from_bufnr(buffer) }, buffer)
    end
  end,
}

words.format = {
  run = function()
    if not here() then
      return
    end
    if vim.lsp.buf.format then -- Neovim 0.8
      vim.lsp.buf.format({ name = "wickrule" })
    else
      vim.lsp.buf.formatting_sync()
    end
  end,
}

words.restart = { run = client.restart }

local names = { "explain", "format", "handbook", "mend", "restart", "sheet" }

local function beginning(with, list)
  return vim.tbl_filter(function(word)
    return vim.startswith(word, with)
  end, list)
end

-- complete is what may stand where the cursor is in the command line.
local function complete(typed, line)
  local before = vim.split(vim.trim(line:sub(1, #line - #typed)), "%s+")
  if #before == 1 then
    return beginning(typed, names)
  end
  local word = words[before[2]]
  return #before == 2 and word and word.offers and beginning(typed, word.offers()) or {}
end

local function run(command)
  local name, argument, more = unpack(command.fargs)
  local word = words[name]
  if not word then
    return complain((":Wickrule has no %s: there are %s."):format(name, table.concat(names, ", ")))
  end
  if more or argument and not word.offers then
    return complain((":Wickrule %s takes %s."):format(name, word.offers and "one word" or "nothing more"))
  end
  word.run(argument)
end

function M.define()
  vim.api.nvim_create_user_command("Wickrule", run, { nargs = "+", complete = complete, desc = "batch sheets, repairs and reasons for candle recipes" })
end

return M
