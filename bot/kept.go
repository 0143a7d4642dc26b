package bot

import (
	"leafround/bot/ledger"
	"leafround/core/farm"
	"leafround/core/leaf"
	"leafround/parser"
)

// keptFarm is a farm folded from its log, kept between messages. Whoever
// touches it holds the farm's row in the database.
type keptFarm struct {
	version int64 // of the log that it was folded from
	farm    *farm.Farm
	book    *parser.Book
	booked  int // the farm's version when the book was made
}

// keep gives the farm as its log stands: what has changed since the last time
// is applied.
func (t *turn) keep(row ledger.Farm) error {
	t.b.mu.Lock()
	k := t.b.farms[row.ID]
	if k == nil {
		k = &keptFarm{farm: farm.New(), booked: -1}
		t.b.farms[row.ID] = k
	}
	t.b.mu.Unlock()
	if k.version != row.Version {
		log, version, err := t.tx.Log(t.ctx, row.ID, k.version)
		if err != nil {
			return err
		}
		k.farm.ApplyAll(log)
		k.version = max(version, row.Version)
	}
	t.row, t.kept, t.farm = row, k, k.farm
	return nil
}

// forget drops a kept farm, so that it is folded anew: what it knows may not
// have been committed.
func (b *Bot) forget(id int64) {
	b.mu.Lock()
	defer b.mu.Unlock()
	delete(b.farms, id)
}

// register gives the farm's names, ready for the parser.
func (k *keptFarm) register() *parser.Book {
	if k.booked == k.farm.Version() && k.book != nil {
		return k.book
	}
	var names []parser.Name
	for _, p := range k.farm.Paddocks {
		if p.Listed {
			names = append(names, parser.Name{Name: p.Name, Live: leaf.Of(p.Grass).Live})
		}
	}
	var mobs []string
	for _, m := range k.farm.Mobs {
		if m.Listed && !m.Gone {
			mobs = append(mobs, m.Name)
		}
	}
	k.book, k.booked = parser.NewBook(names, mobs), k.farm.Version()
	return k.book
}
