package formula

import (
	"crypto/sha256"
	"encoding/binary"
	"strings"
)

// A code is seven letters, a dash and six letters: "2h00k8m-3f9a2c". The six
// are the first 30 bits of the SHA-256 of all attributes and say whether two
// formulations are the same; that two different ones agree happens once in a
// thousand million. The seven are one for each Part, in their order, and say
// which parts differ; 0 is a part that is not there. One in thirty-one times a
// part changes and keeps its letter, so the seven name changes and never say
// that there is none.
//
// What is hashed is a line "name=value" for each attribute, in order, for the
// six with the scheme's name before it: where the scheme changes, every code
// does.
const scheme = "wickrule formulation 1\n"

// letters are the digits and lower-case letters but i, l, o and u, which are
// misread: 32 in all, so five bits each.
const letters = "0123456789abcdefghjkmnpqrstvwxyz"

const wholeLetters = 6

// codeLength is how long a code is.
const codeLength = parts + 1 + wholeLetters

func codeOf(attributes []Attribute) string {
	var out [codeLength]byte
	text := append(make([]byte, 0, 512), scheme...)
	for part := Part(0); part < parts; part++ {
		start := len(text)
		for i := range attributes {
			if a := &attributes[i]; a.Part == part {
				text = append(text, a.Name...)
				text = append(text, '=')
				text = append(text, a.Value...)
				text = append(text, '\n')
			}
		}
		out[part] = letters[0]
		if len(text) > start {
			sum := sha256.Sum256(text[start:])
			out[part] = letters[1+binary.BigEndian.Uint64(sum[:])%31]
		}
	}
	out[parts] = '-'
	sum := sha256.Sum256(text)
	bits := binary.BigEndian.Uint64(sum[:])
	for i := range wholeLetters {
		out[parts+1+i] = letters[bits>>(64-5*(i+1))&31]
	}
	return string(out[:])
}

// IsCode says whether a text has the form of a code.
func IsCode(text string) bool {
	if len(text) != codeLength || text[parts] != '-' {
		return false
	}
	for i := range len(text) {
		if i != parts && !strings.Contains(letters, text[i:i+1]) {
			return false
		}
	}
	return true
}

// Changed lists the parts in which two codes differ. It may be empty though
// the codes are not the same: that something changed is sure, and what is not
// in their letters. A text that is no code has nothing to compare.
func Changed(was, is string) []Part {
	if !IsCode(was) || !IsCode(is) {
		return nil
	}
	var changed []Part
	for part := Part(0); part < parts; part++ {
		if was[part] != is[part] {
			changed = append(changed, part)
		}
	}
	return changed
}
