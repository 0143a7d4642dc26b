package parser

import "strings"

// usZones are the zones of the United States beside those that begin with
// America/Indiana, America/Kentucky, America/North_Dakota and US (IANA time zone
// database, zone.tab, country code US).
var usZones = wordSet(`America/New_York America/Detroit America/Chicago America/Menominee America/Denver America/Boise America/Phoenix
	America/Los_Angeles America/Anchorage America/Juneau America/Sitka America/Metlakatla America/Yakutat America/Nome America/Adak
	Pacific/Honolulu America/Louisville America/Indianapolis America/Fort_Wayne America/Shiprock America/Knox_IN America/Atka
	EST5EDT CST6CDT MST7MDT PST8PDT`)

// MonthFirst tells whether people in an IANA zone write 11/3 for the 3rd of
// November: those of the United States do.
func MonthFirst(zone string) bool {
	for _, p := range []string{"US/", "America/Indiana/", "America/Kentucky/", "America/North_Dakota/"} {
		if strings.HasPrefix(zone, p) {
			return true
		}
	}
	return usZones[zone]
}
