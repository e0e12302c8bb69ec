# The desk in English: why a tablet’s ticket was not taken, and what to do about a mistake in the table’s files.

not-taken-same-id = another ticket was delivered under the same id
not-taken-same-number = another ticket of the show has the number
not-taken-other-lines = the sum and the piece do not have the same lines
not-taken-unknown-show = the ticket belongs to a show that this desk does not know
not-taken-other-currency = the sum is in { $found }, and this table never took that; it takes { $taken }
not-taken-odd-id = “{ $found }” is the id of nothing: ids are small letters, digits and hyphens
not-taken-many-drops = { $n } drops are on no piece; { $most } at most
not-taken-odd-length = a length of { $mm } mm can’t be made; { $least } mm to { $most } mm can
not-taken-odd-neck = a neck of { $mm } mm is nobody’s; they are from { $least } mm to { $most } mm
not-taken-other-digit = the number has another tablet’s digit
not-taken-not-asked = nobody at the desk has asked for it
not-taken-unreadable = the desk can’t read it (answer { $status }: { $said })
not-taken-no-answer = the desk did not answer ({ $why })
not-taken-desk-failed = something is wrong at the desk (answer { $status }: { $said })
mistake-to-do = Open each file in a text editor, mend the place and save it.

kiosk-version = Version { $version }
kiosk-other-version = Version { $version }, and the desk is { $own }. It is served as it is; install the same on both after the show.
kiosk-no-version = Its version is not told: an earlier one than { $own }, or it has not reported yet. It is served as it is.
