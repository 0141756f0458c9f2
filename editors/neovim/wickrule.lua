-- Wickrule in Neovim 0.7 and newer. Copy this file to
-- ~/.config/nvim/plugin/wickrule.lua; the program wickrule must be on the PATH.
--
-- K             what stands under the cursor     gd            where it is written
-- gra           what can be done here            grn           rename it everywhere
-- grr           where it is used                 grl           act on the line above a recipe
-- :LayOut       lay the file out alike           CTRL-X CTRL-O complete (while typing)
-- CTRL-S        what the function takes (while typing)

-- Recipe files have a file type of their own, with the comments of HCL.
vim.api.nvim_create_autocmd({ "BufRead", "BufNewFile" }, {
  pattern = "*.candle.hcl",
  callback = function()
    vim.bo.filetype = "candle"
    vim.bo.commentstring = "# %s"
  end,
})

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

local function on_attach(client, buffer)
  show_in(vim.lsp.diagnostic.get_namespace(client.id))
  vim.api.nvim_create_autocmd("DiagnosticChanged", { buffer = buffer, callback = show_findings })
  local function key(mode, keys, act)
    vim.keymap.set(mode, keys, act, { buffer = buffer })
  end
  key("n", "K", vim.lsp.buf.hover)
  key("n", "gd", vim.lsp.buf.definition)
  key({ "n", "x" }, "gra", vim.lsp.buf.code_action)
  key("n", "grn", vim.lsp.buf.rename)
  key("n", "grr", vim.lsp.buf.references)
  key("n", "grl", vim.lsp.codelens.run)
  key("i", "<C-s>", vim.lsp.buf.signature_help)
  vim.bo[buffer].omnifunc = "v:lua.vim.lsp.omnifunc"
  vim.api.nvim_buf_create_user_command(buffer, "LayOut", function()
    if vim.lsp.buf.format then
      vim.lsp.buf.format()
    else
      vim.lsp.buf.formatting_sync() -- Neovim 0.7
    end
  end, { desc = "lay the file out alike" })

  -- The other basis, the other scale, how far a batch goes: beside the figures.
  if vim.lsp.inlay_hint then -- Neovim 0.10
    vim.lsp.inlay_hint.enable(true, { bufnr = buffer })
  end
  -- What a recipe makes and how it stands: above it.
  if vim.lsp.codelens.enable then -- Neovim 0.12
    vim.lsp.codelens.enable(true, { bufnr = buffer })
  else
    local function refresh()
      vim.lsp.codelens.refresh()
    end
    refresh()
    vim.api.nvim_create_autocmd({ "BufEnter", "InsertLeave", "TextChanged", "BufWritePost" }, { buffer = buffer, callback = refresh })
  end
end

-- Most that stands above a block is there to be read: acting on it does nothing.
vim.lsp.commands[""] = function() end

-- The line above a recipe opens its batch sheet.
vim.lsp.commands["wickrule.sheet"] = function(command, context)
  local client = vim.lsp.get_client_by_id(context.client_id)
  local params = { command = command.command, arguments = command.arguments }
  local function open(err, sheet)
    if err then
      return vim.notify(err.message, vim.log.levels.ERROR)
    end
    vim.cmd("new")
    vim.bo.buftype, vim.bo.bufhidden, vim.bo.filetype = "nofile", "wipe", "markdown"
    vim.api.nvim_buf_set_lines(0, 0, -1, false, vim.split(sheet, "\n"))
  end
  if vim.fn.has("nvim-0.11") == 1 then
    client:request("workspace/executeCommand", params, open)
  else
    client.request("workspace/executeCommand", params, open)
  end
end

-- Neovim runs a server's commands, but some versions do not tell.
local capabilities = vim.lsp.protocol.make_client_capabilities()
capabilities.workspace.executeCommand = { dynamicRegistration = false }

local config = {
  name = "wickrule",
  cmd = { "wickrule", "lsp" },
  filetypes = { "candle" },
  root_markers = { "shop.candle.hcl" },
  on_attach = on_attach,
  capabilities = capabilities,
  flags = { debounce_text_changes = 20 }, -- milliseconds after a key; Neovim's own 150 are felt
}

if vim.lsp.config then -- Neovim 0.11
  vim.lsp.config("wickrule", config)
  vim.lsp.enable("wickrule")
  return
end

-- Older: one server for each shop, started by its first file.
local servers = {}
vim.api.nvim_create_autocmd("FileType", {
  pattern = "candle",
  callback = function(event)
    local marker = vim.fn.findfile("shop.candle.hcl", vim.fn.expand("%:p:h") .. ";")
    local root = vim.fn.fnamemodify(marker ~= "" and marker or vim.fn.expand("%:p"), ":p:h")
    if not servers[root] or vim.lsp.client_is_stopped(servers[root]) then
      local start = vim.lsp.start_client or vim.lsp.start
      servers[root] = start(vim.tbl_extend("force", config, {
        root_dir = root,
        workspace_folders = { { uri = vim.uri_from_fname(root), name = root } },
      }))
    end
    vim.lsp.buf_attach_client(event.buf, servers[root])
  end,
})
