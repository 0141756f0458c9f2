-- The program: where it is, or what to do about it; and what it prints.
local settings = require("wickrule.settings")
local M = {}

-- find returns the path of the program, or nil and what to do.
function M.find()
  local said = settings.read().program
  local path = vim.fn.exepath(vim.fn.expand(said))
  if path ~= "" then
    return path
  end
  if said == settings.usual.program then
    return nil, "There is no program wickrule on the PATH. Put it there, or say where it is: vim.g.wickrule = { program = '/where/it/is' }. "
      .. "The project's README says how to install it."
  end
  return nil, ("The setting program of vim.g.wickrule is %q, and there is no program that can be run."):format(said)
end

-- lines is what the program prints to standard output, run in a folder; where
-- it fails, nil and what it says about that.
function M.lines(folder, words)
  local path, trouble = M.find()
  if not path then
    return nil, trouble
  end
  local out, complaints = {}, {}
  local job = vim.fn.jobstart(vim.list_extend({ path }, words), {
    cwd = folder,
    stdout_buffered = true,
    stderr_buffered = true,
    on_stdout = function(_, data)
      out = data
    end,
    on_stderr = function(_, data)
      complaints = data
    end,
  })
  local status = vim.fn.jobwait({ job }, 60000)[1]
  if status ~= 0 then
    local said = vim.trim(table.concat(complaints, " "))
    return nil, said ~= "" and said or ("wickrule %s ended with %d"):format(words[1], status)
  end
  return vim.tbl_filter(function(line)
    return line ~= ""
  end, out)
end

return M
