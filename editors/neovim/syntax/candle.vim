" Colors of candle recipes before the language server has read them, and where
" Neovim is older than 0.9 and shows none of the server's.
if exists("b:current_syntax")
  finish
endif

syntax match candleAttribute /\<[A-Za-z_][A-Za-z0-9_-]*\ze\s*=[^=]/
syntax match candleBlock /^\s*\zs[a-z_]\+\ze\(\s\+"\([^"\\]\|\\.\)*"\)*\s*{/
syntax match candleNumber /\<\d\+\(\.\d\+\)\=\>/
syntax keyword candleBoolean true false
syntax region candleText start=/"/ skip=/\\./ end=/"/ oneline contains=candleAmount,candleEscape,candlePart
syntax match candleAmount /"\zs\d[0-9.,\/ ]*\(\( to \|–\)[0-9.\/ ]\+\)\=[^"0-9]*\(\d[0-9.]*[^"0-9]*\)\=\ze"/ contained
syntax match candleEscape /\\\(u\x\{4}\|U\x\{8}\|.\)/ contained
syntax region candlePart matchgroup=candleEscape start=/\${/ end=/}/ contained oneline contains=candleText,candleNumber,candleFunction
syntax match candleFunction /\<[a-z]\+\ze(/
syntax region candleLongText start=/<<-\=\z([A-Za-z_][A-Za-z0-9_-]*\)\s*$/ end=/^\s*\z1\s*$/ contains=candlePart
syntax match candleComment /\(#\|\/\/\).*$/ contains=@Spell
syntax region candleComment start=/\/\*/ end=/\*\// contains=@Spell

highlight default link candleAttribute Identifier
highlight default link candleBlock Keyword
highlight default link candleNumber Number
highlight default link candleBoolean Boolean
highlight default link candleText String
highlight default link candleLongText String
highlight default link candleAmount Number
highlight default link candleEscape SpecialChar
highlight default link candleFunction Function
highlight default link candleComment Comment

let b:current_syntax = "candle"
