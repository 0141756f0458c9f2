package lsp

import (
	"strings"

	"wickrule/schema"
)

// comments finds the comments of a text, each as one span without the line end
// behind it. It looks at the characters alone, so that it knows them in a text
// that does not read as well: a quote left open ends with its line.
func comments(text string) []schema.Span {
	var found []schema.Span
	for i := 0; i < len(text); {
		rest := text[i:]
		end := i + 1
		switch {
		case rest[0] == '#' || strings.HasPrefix(rest, "//"):
			end = lineEnd(text, i)
			found = append(found, schema.Span{Start: int32(i), End: int32(end)})
		case strings.HasPrefix(rest, "/*"):
			end = lineEnd(text, i) // one that never ends is only its line
			if n := strings.Index(rest[2:], "*/"); n >= 0 {
				end = i + 2 + n + 2
			}
			found = append(found, schema.Span{Start: int32(i), End: int32(end)})
		case rest[0] == '"':
			end = quoteEnd(text, i)
		case strings.HasPrefix(rest, "<<"):
			end = heredocEnd(text, i)
		}
		i = end
	}
	return found
}

// lineEnd is where the line that i is on ends, before its line ending.
func lineEnd(text string, i int) int {
	if n := strings.IndexAny(text[i:], "\r\n"); n >= 0 {
		return i + n
	}
	return len(text)
}

// nextLine is where the line after the one that i is on starts.
func nextLine(text string, i int) int {
	i = lineEnd(text, i)
	if strings.HasPrefix(text[i:], "\r\n") {
		return i + 2
	}
	return min(i+1, len(text))
}

// quoteEnd is behind the quote that closes the text in quotes starting at i,
// or at the end of the line. What a template fills in may hold quotes.
func quoteEnd(text string, i int) int {
	var braces []int // how many are open in each template, the outermost first
	quoted := true
	for i++; i < len(text); i++ {
		c := text[i]
		switch {
		case c == '\r' || c == '\n':
			return i
		case quoted && c == '\\':
			if i+1 < len(text) && text[i+1] != '\r' && text[i+1] != '\n' {
				i++
			}
		case quoted && (strings.HasPrefix(text[i:], "$${") || strings.HasPrefix(text[i:], "%%{")):
			i += 2
		case quoted && (strings.HasPrefix(text[i:], "${") || strings.HasPrefix(text[i:], "%{")):
			braces, quoted = append(braces, 1), false
			i++
		case quoted && c == '"':
			if len(braces) == 0 {
				return i + 1
			}
			quoted = false
		case quoted:
		case c == '"':
			quoted = true
		case c == '{':
			braces[len(braces)-1]++
		case c == '}':
			if braces[len(braces)-1]--; braces[len(braces)-1] == 0 {
				braces, quoted = braces[:len(braces)-1], true
			}
		}
	}
	return len(text)
}

// heredocEnd is behind the closing marker of the heredoc that starts at i.
// What is none ends behind its signs.
func heredocEnd(text string, i int) int {
	head := strings.TrimPrefix(text[i+2:lineEnd(text, i)], "-")
	marker := strings.TrimSpace(head)
	if marker == "" || strings.ContainsAny(marker, " \t\"#") {
		return i + 2
	}
	for line := nextLine(text, i); line < len(text); line = nextLine(text, line) {
		end := lineEnd(text, line)
		if strings.TrimSpace(text[line:end]) == marker {
			return end
		}
	}
	return i + 2
}
