package schema

type mended struct {
	copy []byte
	inserted []insertion
	broken []brokenValue
	problems []Problem
	whole bool
}

func mend(f *File, seen []byte) mended { return mended{copy: seen} }
