-- The language server: one for each shop, started by the first recipe of it
-- that is opened.
local keys = require("wickrule.keys")
local pages = require("wickrule.pages")
local program = require("wickrule.program")
local settings = require("wickrule.settings")
local shop = require("wickrule.shop")
local M = {}

-- method calls one of a client: since Neovim 0.11 they are methods.
local function method(client, name, ...)
  if vim.fn.has("nvim-0.11") == 1 then
    return client[name](client, ...)
  end
  return client[name](...)
end

-- The findings of this server are shown while you type, beside the line (K tells
-- the whole of one that is cut). Where the server is asked for them, they lie in
-- a space that is there from the first of them on.
local shown = {}
local function show_in(space)
  if not shown[space] then
    shown[space] = true
    vim.diagnostic.config({ update_in_insert = true, virtual_text = true, severity_sort = true }, space)
  end
end

local function show_findings()
  for space, about in pairs(vim.diagnostic.get_namespaces()) do
    if about.name and about.name:find("wickrule", 1, true) then
      show_in(space)
    end
  end
end

-- Lines above recipes. Newer versions keep them up to date themselves.
local function show_lenses(buffer)
  if vim.lsp.codelens.enable then -- Neovim 0.12
    vim.lsp.codelens.enable(true, { bufnr = buffer })
    return
  end
  local function refresh()
    vim.lsp.codelens.refresh()
  end
  refresh()
  vim.api.nvim_create_autocmd({ "BufEnter", "InsertLeave", "TextChanged", "BufWritePost" }, { buffer = buffer, callback = refresh })
end

local function on_attach(client, buffer)
  show_in(vim.lsp.diagnostic.get_namespace(client.id))
  vim.api.nvim_create_autocmd("DiagnosticChanged", { buffer = buffer, callback = show_findings })
  vim.bo[buffer].omnifunc = "v:lua.vim.lsp.omnifunc"
  local wanted = settings.read()
  if wanted.keys then
    keys.set(buffer)
  end
  if wanted.hints and vim.lsp.inlay_hint then -- Neovim 0.10
    vim.lsp.inlay_hint.enable(true, { bufnr = buffer })
  end
  if wanted.lenses then
    show_lenses(buffer)
  end
end

-- servers are those that run, all of them or those of a buffer.
local function servers(buffer)
  local clients
  if vim.lsp.get_clients then -- Neovim 0.10
    clients = vim.lsp.get_clients({ bufnr = buffer })
  else
    clients = buffer and vim.lsp.buf_get_clients(buffer) or vim.lsp.get_active_clients()
  end
  local ours = {}
  for _, client in pairs(clients) do
    if client.name == "wickrule" then
      table.insert(ours, client)
    end
  end
  return ours
end

-- of is the server that a buffer has, or nil.
function M.of(buffer)
  return servers(buffer)[1]
end

-- request asks a server about a buffer. What it answers is handed to answered;
-- what goes wrong is told.
function M.request(client, name, params, buffer, answered)
  method(client, "request", name, params, function(err, result)
    if err then
      vim.notify(err.message, vim.log.levels.ERROR)
    elseif answered then
      answered(result)
    end
  end, buffer)
end

-- execute has the server execute one of its commands.
function M.execute(client, command, arguments, buffer, answered)
  M.request(client, "workspace/executeCommand", { command = command, arguments = arguments }, buffer, answered)
end

-- The line above a recipe opens its batch sheet.
local function show_sheet(command, context)
  local client = vim.lsp.get_client_by_id(context.client_id)
  M.execute(client, command.command, command.arguments, context.bufnr, function(sheet)
    pages.show("batch sheet/" .. command.arguments[2], sheet)
  end)
end

local function config(path, root)
  local wanted = settings.read()
  -- Neovim runs a server's commands, but some versions do not tell.
  local capabilities = vim.lsp.protocol.make_client_capabilities()
  capabilities.workspace.executeCommand = { dynamicRegistration = false }
  return {
    name = "wickrule",
    cmd = { path, "lsp" },
    root_dir = root,
    workspace_folders = { { uri = vim.uri_from_fname(root), name = root } },
    on_attach = on_attach,
    capabilities = capabilities,
    init_options = { level = wanted.level, hints = wanted.hints, lenses = wanted.lenses },
    flags = { debounce_text_changes = 20 }, -- milliseconds after a key; Neovim's own 150 are felt
  }
end

-- told holds what was said already, so that it is said once.
local told = {}
local function tell(trouble)
  if not told[trouble] then
    told[trouble] = true
    vim.notify(trouble, vim.log.levels.WARN)
  end
end

-- start gives a buffer the server of its shop, which may run already.
local function start(buffer)
  local _, troubles = settings.read()
  vim.tbl_map(tell, troubles)
  local path, trouble = program.find()
  if not path then
    return tell(trouble)
  end
  local root = shop.root(vim.api.nvim_buf_get_name(buffer))
  if vim.lsp.start then -- Neovim 0.8
    vim.api.nvim_buf_call(buffer, function()
      vim.lsp.start(config(path, root))
    end)
    return
  end
  for _, client in ipairs(servers()) do
    if client.config.root_dir == root then
      vim.lsp.buf_attach_client(buffer, client.id)
      return
    end
  end
  vim.lsp.buf_attach_client(buffer, vim.lsp.start_client(config(path, root)))
end

-- enable has every recipe that is opened from now on get its server.
function M.enable()
  vim.lsp.commands["wickrule.sheet"] = show_sheet
  -- Most that stands above a block is there to be read: acting on it does nothing.
  vim.lsp.commands[""] = function() end
  vim.api.nvim_create_autocmd("FileType", {
    pattern = "candle",
    callback = function(event)
      if vim.bo[event.buf].buftype == "" then
        start(event.buf)
      end
    end,
  })
end

-- restart ends all servers, and starts them anew for the recipes that are open.
function M.restart()
  local running = servers()
  for _, client in ipairs(running) do
    method(client, "stop")
  end
  -- Neovim forgets a server when it has taken away what that showed.
  vim.wait(3000, function()
    for _, client in ipairs(running) do
      if vim.lsp.get_client_by_id(client.id) then
        return false
      end
    end
    return true
  end, 20)
  told = {}
  for _, buffer in ipairs(vim.api.nvim_list_bufs()) do
    if vim.api.nvim_buf_is_loaded(buffer) and vim.bo[buffer].filetype == "candle" then
      start(buffer)
    end
  end
end

return M
