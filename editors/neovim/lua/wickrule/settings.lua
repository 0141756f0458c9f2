-- What the person wrote into vim.g.wickrule, and what stands where nothing is
-- written. It is read when it is asked for, so that a change counts from the
-- next start of the server on.
local M = {}

M.usual = {
  program = "wickrule", -- a name to be found on the PATH, or a path
  level = "consider", -- the softest findings shown: consider, should or must
  hints = true, -- figures beside the numbers
  lenses = true, -- lines above recipes and stock
  keys = true, -- keys in recipe files
}

local levels = { consider = true, should = true, must = true }

-- read returns the settings, and in sentences what of vim.g.wickrule is not one
-- of them and was not taken.
function M.read()
  local said, troubles = vim.g.wickrule, {}
  local settings = vim.deepcopy(M.usual)
  if said == nil then
    return settings, troubles
  end
  if type(said) ~= "table" then
    return settings, { "vim.g.wickrule has to be a table, such as { level = 'should' }" }
  end
  for name, value in pairs(said) do
    local usual = M.usual[name]
    if usual == nil then
      table.insert(troubles, ("vim.g.wickrule has %q, which is no setting: there are hints, keys, lenses, level and program"):format(tostring(name)))
    elseif type(value) ~= type(usual) then
      table.insert(troubles, ("%s in vim.g.wickrule has to be %s"):format(name, type(usual) == "boolean" and "true or false" or "a text"))
    elseif name == "level" and not levels[value] then
      table.insert(troubles, ("level in vim.g.wickrule is %q: it can be consider, should or must"):format(value))
    else
      settings[name] = value
    end
  end
  table.sort(troubles)
  return settings, troubles
end

return M
