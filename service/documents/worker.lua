-- Run by `pandoc lua`: reads documents off standard input until it ends, one answer for each.
-- It says `ready` first.
--
-- A request is a line, `<bytes> <format>`, and that many bytes. An answer is a line,
-- `<status> <bytes>`, and that many bytes of JSON: 0 is a syntax tree, 1 a document that
-- can not be read, 2 a tree beyond the bound given as the first argument.
--
-- The empty list handed to `pandoc.read` runs the reader in pandoc's sandbox: it sees no
-- file and no network.

local most = tonumber(arg[1])

local function tree(content, format)
  return pandoc.write(pandoc.read(content, format, {}, {}), "json")
end

local function answer(status, output)
  io.write(status, " ", #output, "\n", output)
  io.flush()
end

io.stdout:setvbuf("full")
io.write("ready\n")
io.flush()
for line in io.lines() do
  local length, format = line:match("^(%d+) (%S+)$")
  -- Reading no bytes would wait for the next request.
  local content = length == "0" and "" or io.read(tonumber(length)) or ""
  local fine, output = pcall(tree, content, format)
  if not fine then
    answer(1, "")
  elseif #output > most then
    answer(2, "")
  else
    answer(0, output)
  end
  -- What the last document took is let go before the next one comes.
  content, output = nil, nil
  pandoc.mediabag.empty()
  collectgarbage()
end
