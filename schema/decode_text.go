package schema

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// unquote is what the source between two quotes stands for. Where nothing is
// escaped it is the source itself, and costs no memory.
func unquote(source string) string {
	if !escapes(source) {
		return source
	}
	var b strings.Builder
	for i := 0; i < len(source); {
		piece, next := escape(source, i)
		b.WriteString(piece)
		i = next
	}
	return b.String()
}

// escapes says whether anything in the source may be escaped.
func escapes(source string) bool {
	for i := 0; i < len(source); i++ {
		switch source[i] {
		case '\\':
			return true
		case '{':
			if i >= 2 && (source[i-1] == '$' || source[i-1] == '%') && source[i-2] == source[i-1] {
				return true
			}
		}
	}
	return false
}

// escape is what the source at i stands for, and where it goes on: a whole
// escape sequence, or one byte.
func escape(source string, i int) (piece string, next int) {
	rest := source[i:]
	if strings.HasPrefix(rest, "$${") || strings.HasPrefix(rest, "%%{") {
		return rest[1:3], i + 3
	}
	if rest[0] != '\\' || len(rest) < 2 {
		return rest[:1], i + 1
	}
	switch rest[1] {
	case 'n':
		return "\n", i + 2
	case 'r':
		return "\r", i + 2
	case 't':
		return "\t", i + 2
	case 'u', 'U':
		size := 6
		if rest[1] == 'U' {
			size = 10
		}
		if len(rest) < size {
			return rest[:1], i + 1
		}
		code, err := strconv.ParseUint(rest[2:size], 16, 32)
		if err != nil || code > utf8.MaxRune {
			return rest[:1], i + 1
		}
		return string(rune(code)), i + size
	}
	return rest[1:2], i + 2 // \" and \\
}

// sourceOffset is where in the source between two quotes the text it stands
// for has its byte number offset.
func sourceOffset(source string, offset int) int {
	i := 0
	for i < len(source) && offset > 0 {
		piece, next := escape(source, i)
		if len(piece) > offset {
			break
		}
		offset -= len(piece)
		i = next
	}
	return i
}

// heredoc is the text of a heredoc, from its << to its closing marker. With
// <<- the indentation that all its lines share is taken away; lines of spaces
// alone are left as they are. Every line ends in LF, however the file's do.
func heredoc(source string) string {
	flush := strings.HasPrefix(source, "<<-")
	_, body, _ := strings.Cut(source, "\n")
	body = body[:strings.LastIndexByte(body, '\n')+1] // the closing marker is the last line
	lines := strings.SplitAfter(body, "\n")
	shared := -1
	for _, line := range lines {
		text := strings.TrimLeftFunc(line, unicode.IsSpace)
		if text == "" {
			continue
		}
		if indent := utf8.RuneCountInString(line[:len(line)-len(text)]); shared < 0 || indent < shared {
			shared = indent
		}
	}
	var b strings.Builder
	for _, line := range lines {
		if flush && strings.TrimLeftFunc(line, unicode.IsSpace) != "" {
			line = dropRunes(line, shared)
		}
		if strings.HasSuffix(line, "\r\n") {
			line = line[:len(line)-2] + "\n"
		}
		b.WriteString(line)
	}
	return heredocEscapes.Replace(b.String())
}

var heredocEscapes = strings.NewReplacer("$${", "${", "%%{", "%{")

func dropRunes(line string, n int) string {
	for ; n > 0 && line != ""; n-- {
		_, size := utf8.DecodeRuneInString(line)
		line = line[size:]
	}
	return line
}

// Quote writes text as a value of the house format, quotes included.
func Quote(text string) string {
	return `"` + quoteEscapes.Replace(text) + `"`
}

var quoteEscapes = strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\r", `\r`, "\t", `\t`, "${", "$${", "%{", "%%{")
