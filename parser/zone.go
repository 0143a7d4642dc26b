package parser

import "strings"

// statesZones are the IANA zones of the United States (country code US in the
// tz database's zone.tab), where dates are written with the month first.
var statesZones = map[string]bool{
	"America/New_York": true, "America/Detroit": true, "America/Chicago": true, "America/Menominee": true,
	"America/Denver": true, "America/Boise": true, "America/Phoenix": true, "America/Los_Angeles": true,
	"America/Anchorage": true, "America/Juneau": true, "America/Sitka": true, "America/Metlakatla": true,
	"America/Yakutat": true, "America/Nome": true, "America/Adak": true, "Pacific/Honolulu": true,
	"America/Indianapolis": true, "America/Louisville": true, "America/Fort_Wayne": true, "America/Shiprock": true,
}

// MonthFirst tells whether dates such as 11/3 have the month first in a zone:
// in the United States.
func MonthFirst(zone string) bool {
	for _, stem := range []string{"US/", "America/Indiana/", "America/Kentucky/", "America/North_Dakota/"} {
		if strings.HasPrefix(zone, stem) {
			return true
		}
	}
	return statesZones[zone]
}
