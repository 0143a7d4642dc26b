package ledger

import "context"

// Member is a person on a farm.
type Member struct {
	Farm    int64  `db:"farm"`
	Person  int64  `db:"person"`
	Name    string `db:"name"`
	Manager bool   `db:"manager"`
}

const meetSQL = `
INSERT INTO member (farm, person, name) VALUES ($1, $2, $3)
ON CONFLICT (farm, person) DO UPDATE SET name = EXCLUDED.name
RETURNING farm, person, name, manager`

// Meet notes that a person is on a farm, by the name that they bear now.
func (t *Tx) Meet(ctx context.Context, farm, person int64, name string) (Member, error) {
	var m Member
	_, err := t.get(ctx, "meet a person", &m, meetSQL, farm, person, clean(name))
	return m, err
}

const setManagerSQL = `UPDATE member SET manager = $3 WHERE farm = $1 AND person = $2`

// SetManager makes a member a manager, or no longer.
func (t *Tx) SetManager(ctx context.Context, farm, person int64, manager bool) error {
	_, err := t.do(ctx, "set a manager", setManagerSQL, farm, person, manager)
	return err
}

const membersSQL = `SELECT farm, person, name, manager FROM member WHERE farm = $1 ORDER BY name, person`

// Members lists who is on a farm.
func (t *Tx) Members(ctx context.Context, farm int64) ([]Member, error) {
	var all []Member
	err := t.list(ctx, "list the members", &all, membersSQL, farm)
	return all, err
}

const memberSQL = `SELECT farm, person, name, manager FROM member WHERE farm = $1 AND person = $2`

// Member gives a person on a farm; found is false for somebody not met there.
func (t *Tx) Member(ctx context.Context, farm, person int64) (m Member, found bool, err error) {
	found, err = t.get(ctx, "read a member", &m, memberSQL, farm, person)
	return m, found, err
}
