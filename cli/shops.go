package cli

import (
	"errors"
	"io"
	"io/fs"
	"os"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/lint/report"
)

// found is a shop on disk that was asked for.
type found struct {
	volume string
	lint.Asked
}

func (f found) place() place { return place{f.volume, f.Root} }

// find looks up the shops that the arguments name; without any, the shop
// around the working folder.
func (s *session) find(args []string) (shops []found, unread []report.Unread) {
	var volumes []string
	named := map[string][]string{}
	add := func(p place) {
		if named[p.volume] == nil {
			volumes = append(volumes, p.volume)
		}
		named[p.volume] = append(named[p.volume], p.path)
	}
	for _, arg := range args {
		add(s.locate(arg))
	}
	if len(args) == 0 {
		here := s.locate(".")
		if root, ok := lint.ShopAbove(os.DirFS(here.volume), here.path); ok {
			here.path = root
		}
		add(here)
	}
	for _, volume := range volumes {
		asked, errs := lint.Discover(os.DirFS(volume), named[volume])
		for _, a := range asked {
			shops = append(shops, found{volume, a})
		}
		for _, e := range errs {
			e.Name = s.shown(place{volume, e.Name})
			unread = append(unread, report.Unread{ReadError: e})
		}
	}
	return shops, unread
}

// opened is a shop that was read. Root reaches nothing outside its folder.
type opened struct {
	*lint.Shop
	root  *os.Root
	asked lint.Asked
}

// open reads a shop. The caller closes its root, which is nil where the folder
// could not be opened.
func (s *session) open(f found) (opened, []report.Unread) {
	shown := s.shown(f.place())
	root, err := os.OpenRoot(f.place().full())
	if err != nil {
		return opened{}, []report.Unread{{Shop: shown, ReadError: lint.ReadError{Name: ".", Err: err}}}
	}
	shop, errs := lint.Load(root.FS(), shown, s.progress.files)
	disk := os.DirFS(f.volume)
	shop, more := shop.Take(lint.Beside{Disk: disk, Root: f.Root, Repository: lint.Repository(disk, f.Root), Open: func(folder string) (fs.FS, io.Closer, error) {
		return place{f.volume, folder}.open()
	}})
	errs = append(errs, more...)
	var unread []report.Unread
	for _, e := range errs {
		unread = append(unread, report.Unread{Shop: shown, ReadError: e})
	}
	return opened{shop, root, f.Asked}, unread
}

// sayUnread tells on the error stream what could not be read.
func (s *session) sayUnread(list []report.Unread) {
	for _, u := range list {
		s.say("%s: %v", report.Located(u.Shop, u.Name), u.Err)
	}
}

// demoShop is the invented shop that is built into the program.
func demoShop() *lint.Shop {
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	if len(errs) > 0 { // it is part of the program: a fault
		panic(errs[0])
	}
	return shop
}

func missing(err error) bool { return errors.Is(err, fs.ErrNotExist) }
