# The desk in German: the tickets' pages.

# Who a piece is for.
for-under3 = für unter 3
for-from3to5 = für 3 bis 5 Jahre
for-from6to12 = für 6 bis 12 Jahre
for-from13 = für 13 oder älter
for-unknown = nicht gefragt, für wen

# Counts, lengths and what is left.
count-drops = { $n ->
    [one] { $n } Anhänger
   *[other] { $n } Anhänger
  }
count-tickets = { $n ->
    [one] { $n } Ticket
   *[other] { $n } Tickets
  }
count-free-pieces = { $n ->
    [one] { $n } Stück gratis
   *[other] { $n } Stücke gratis
  }
length-both = { $cm } cm · { $inches } in
free-all-held = alle reserviert
free-none = ausverkauft
free-some = { $n } frei
none-left-touch = Nach dem Bestand ist „{ $name }“ nicht mehr da. Liegt das Teil vor dir, tippe auf „Es ist hier“.
no-picture = kein Bild

# What became of a ticket.
state-sent = gesendet
state-called = aufgerufen
state-checked = geprüft
state-rung_up = kassiert
state-handed_over = übergeben
state-let_go = verworfen
state-taken_back = zurückgenommen

# All tickets.
queue-new-sale = Neuer Verkauf
queue-find = Nach Nummer suchen
queue-find-do = Suchen
queue-paid-sale = Einen bezahlten Verkauf suchen
queue-waiting = Wartend
queue-waiting-none = Niemand wartet. Tickets von den Tablets erscheinen hier von selbst.
queue-checked = Geprüft
queue-checked-none = Nichts wartet auf das Geld.
queue-done = Erledigt
queue-done-none = An diesem Markt wurde noch nichts kassiert.
queue-bills = Offene Rechnungen
queue-bill = { $n ->
    [one] Rechnung { $number }, { $n } Ticket
   *[other] Rechnung { $number }, { $n } Tickets
  }
queue-bill-part = { $n ->
    [one] Rechnung { $number }, { $n } Ticket, teilweise bezahlt
   *[other] Rechnung { $number }, { $n } Tickets, teilweise bezahlt
  }
queue-older = Ältere zeigen
queue-later = Spätere zeigen
queue-all = Zu allen Tickets
queue-of-show = vom Markt { $show }
queue-not-suitable = nicht geeignet für diese Person
queue-not-held = ein Teil ist nicht reserviert
queue-unreadable = Dieses Ticket lässt sich nicht lesen
queue-numbered = Tickets { $number }
queue-several = Mehrere Tickets haben diese Nummer. Vergleiche das Stück.
queue-found = Gefunden
queue-none-arrived = An dieser Kasse ist noch kein Ticket { $number } angekommen.
refused-no-group = { $name } ist keine Gruppe von Tickets; es gibt waiting, checked und done

# One ticket: its piece.
ticket-title = Ticket { $number }
ticket-piece = Das Stück
ticket-came = Eingang: { $ago }, Markt { $show }
ticket-as-it-should = So soll das Stück aussehen
ticket-drops-nearer = Die Anhänger, näher gesehen
ticket-number-called = Nummer aufgerufen
ticket-who = Für wen es ist; die Hinweise richten sich danach
ticket-one-more = Noch eines wie dieses
ticket-set = Festlegen
ticket-length-free = Länge, kostenlos
ticket-shorter = einen Zoll kürzer
ticket-longer = einen Zoll länger

# Ticking off.
tick-title = Abhaken
tick-tally = { $done } von { $all }
tick-all = Alles da
tick-sign = abgehakt
tick-base = Basis
tick-instead = statt { $name }
tick-taken-off = abgenommen
tick-missing = Fehlt?
tick-missing-of = Fehlt? { $name }
tick-here = Es ist hier: eins mehr zählen
tick-none-left = Nach dem Bestand ist keins mehr da.

# Changing the piece.
change-title = Das Stück ändern
change-add = Anhänger dazunehmen, nach seinem Fach
change-add-do = Dazu
change-base = Basis; die Anhänger bleiben
change-no-home = In „{ $typed }“ liegt kein Anhänger. Ein Fach ist der Buchstabe eines Kastens und eine Nummer, wie B3.
change-none-left = Nach dem Bestand ist „{ $name }“ nicht mehr da.
change-here = Es ist hier: eins mehr zählen und dazunehmen

# Letting go.
let-go-ask = Ticket { $number } verwerfen?
let-go-text = Seine Anhänger sind sofort für andere Gäste frei. Das Ticket lässt sich nicht wieder aufnehmen.
let-go-yes = Verwerfen
let-go-title = Verwerfen?
let-go-do = Das Ticket verwerfen

# What the page’s forms never send.
refused-part = { $found } ist kein Teil eines Stücks; sende base oder die Nummer der Zeile
refused-length = eine Länge ist eine Zahl von Millimetern von { $least } bis { $most }
refused-wearer = { $found } sagt nicht, für wen es ist; sende eins von { $codes }
refused-charge = { $found } ist keine Summe; sende seen oder today

# A drop is missing.
missing-page = Ein Anhänger fehlt
missing-title = { $name } ({ $home }) fehlt
missing-take-off = Vom Stück abnehmen
missing-instead = Oder einen anderen dafür anhängen
missing-search = Nach Name, Farbe oder Fach suchen
missing-search-do = Suchen
missing-nothing = Nichts, was passt und da ist.
missing-first = Die ersten { $shown } von { $all }; suche, um andere zu sehen.
missing-not-for = Nicht für diese Person
missing-price-free = { $price } · { $free } frei

# What happened so far.
history-title = Was bisher geschah
history-others = Andere Tickets mit dieser Nummer
history-other = vom Markt { $show }, { $state }
history-by = – durch { $name }
history-sent = vom Gast gesendet
history-opened = an der Kasse eröffnet, für ein von Hand aufgezogenes Stück
history-all-ticked = alles abgehakt
history-added-counted = { $name } dazugenommen, eins mehr gezählt
history-added = { $name } dazugenommen
history-added-one = ein Anhänger dazugenommen
history-base = Basis geändert: { $name }
history-called = aufgerufen
history-ticked-counted = { $name }: abgehakt, eins mehr gezählt
history-ticked = { $name }: abgehakt
history-unticked = { $name }: Haken zurückgenommen
history-swapped = ein Anhänger getauscht gegen { $name }
history-swapped-one = ein Anhänger getauscht
history-removed = { $name }: abgenommen
history-removed-one = ein Anhänger abgenommen
history-length = Länge geändert: { $length }
history-length-other = eine andere Länge
history-judged = der Katalog wurde geändert, und damit die Hinweise
history-wearer-unknown = niemand weiß, für wen es ist
history-wearer = es ist { $wearer }
history-wearer-other = für jemand anderen
history-grown-up = für Erwachsene verkauft: { $hazard }
history-grown-up-not = doch nicht für Erwachsene verkauft: { $hazard }
history-grown-up-one = für Erwachsene verkauft
history-sum-today = berechnet werden die Preise von heute
history-sum-seen = berechnet wird die Summe, die der Gast sah
history-told = dem Gast wurden die Hinweise gesagt
history-told-not = die Hinweise doch nicht gesagt
history-rung-up = { $way ->
    [cash] kassiert, bar bezahlt
    [card] kassiert, mit Karte bezahlt
   *[other] kassiert, bezahlt mit { $name }
  }
history-rung-up-so = kassiert
history-handed-over = übergeben
history-let-go = verworfen
history-hold-ended = was nicht abgehakt war, ist nicht mehr reserviert: es hat zu lange gewartet
history-hold-shortened = nicht länger als üblich reserviert: es kam, als die Uhr vorging
history-reduced-percent = { $percent } % Nachlass, { $reason }
history-reduced-amount = { $amount } Nachlass, { $reason }
history-reduced-to = herunter auf { $amount }, { $reason }
history-reduced-not = kein Nachlass von Hand mehr
history-reduced-one = ein Nachlass von Hand
history-package = Paket: { $name }
history-package-none = kein Paket
history-plain = { $name } dazugenommen, ohne Fach
history-plain-one = etwas ohne Fach dazugenommen
history-plain-off = etwas ohne Fach abgenommen
history-taken-back-home = zurückgenommen, die Teile liegen in ihren Fächern: { $reason }
history-taken-back-gone = zurückgenommen, die Teile sind weg: { $reason }
history-taken-back = zurückgenommen
history-line-back-home = { $name } zurückgenommen in { $home }: { $reason }
history-line-back-gone = { $name } zurückgenommen, und weg: { $reason }
history-line-back = ein Anhänger zurückgenommen

# A ticket whose entry is damaged.
unreadable-why = Dieses Ticket lässt sich nicht lesen: Sein Eintrag im Buch ist beschädigt.
unreadable-what-to-do = Alle anderen Tickets sind, wie sie waren. Sieh dir das Stück des Gastes an und lass es noch einmal senden; was dieses Ticket reserviert, ist wieder frei, wenn der Markt abgeschlossen wird. Eine ältere Sicherung hat es vielleicht noch ganz.
unreadable-technical = Für alle, die ins Buch sehen: { $why }

# The cautions on a ticket's page.
told-cautions = Hinweise
told-title = Dem Gast sagen
told-read-at-kiosk = Am Tablet hat eine erwachsene Person bestätigt, sie gelesen zu haben.
told-done = Dem Gast gesagt
told-was = Dem Gast wurde es gesagt.
told-forbidden-piece = Ein Teil dieses Stücks darf an niemanden verkauft werden. Nimm es vom Stück ab.
told-not-everyone = Dieses Stück eignet sich nicht für alle, und niemand hat gesagt, für wen es ist.
told-not-suitable = Dieses Stück ist nicht geeignet: { $wearer }.
told-change-or-confirm = Ändere das Stück oder für wen es ist, oder bestätige unten jede Gefahr mit ihrem Namen: Dann ist es für Erwachsene verkauft, und das steht im Buch.
told-suits-nothing = Nichts auf diesem Tisch ist geeignet.
told-suits = Auf diesem Tisch ist geeignet: { $names }.
told-suits-more = Auf diesem Tisch ist geeignet: { $names } und noch { $n }.
told-never-sold = Es darf an niemanden verkauft werden.
told-grown-up = Für Erwachsene verkauft: { $hazard }
told-grown-up-was = Für Erwachsene verkauft: { $hazard }.

# The sum, and what comes next.
sum-title = Die Summe
sum-subtotal = Zwischensumme
sum-taken-off = Nachlass, { $reason }
sum-discount = Rabatt
sum-tax = Steuer
sum-tax-inside = Enthaltene Steuer
sum-total = Summe
sum-prices-changed = Seit der Gast diese Summe sah, haben sich Preise geändert: Das Stück, wie es gesendet wurde, würde jetzt { $sum } kosten. Der Gast zahlt, was auf dem Bildschirm stand.
sum-refund = Erstatten oder umtauschen
sum-hand-over = Übergeben
sum-let-go = Aus diesem Ticket wurde nichts; seine Anhänger sind wieder frei.
sum-taken-back = Dieses Stück wurde bezahlt und zurückgenommen.
sum-to-bill = Zur Rechnung
sum-paid = { $way ->
    [cash] { $sum } bar bezahlt.
    [card] { $sum } mit Karte bezahlt.
   *[other] { $sum } mit { $name } bezahlt.
  }
sum-paid-over = { $way ->
    [cash] { $sum } bar bezahlt und übergeben.
    [card] { $sum } mit Karte bezahlt und übergeben.
   *[other] { $sum } mit { $name } bezahlt und übergeben.
  }
sum-paid-on-bill = Bezahlt, { $sum } auf der Rechnung.
sum-paid-on-bill-over = Bezahlt, { $sum } auf der Rechnung, und übergeben.
sum-bill-left = Rechnung { $number }, noch { $sum }
sum-implausible = Eine solche Summe nimmt kein Tisch ein. Verwirf das Ticket.
sum-say-charged = Sag zuerst, was berechnet wird.
sum-first = Zuerst: { $what }.
sum-and = { $one } und { $other }
first-tick = { $n ->
    [one] noch { $n } Teil abhaken
   *[other] noch { $n } Teile abhaken
  }
first-tell = dem Gast die Hinweise sagen
first-take-off = abnehmen, was nicht verkauft werden darf
first-confirm = das Stück oder die Person ändern oder bestätigen, dass es für Erwachsene verkauft wird: { $hazards }
sum-cash-rounded = Bargeld wird auf { $step } gerundet.
sum-given = Oder das Bargeld, das gegeben wird
sum-together = Mit anderen zusammen, in Teilen, Anzahlung
sum-changed = Die Summe ist inzwischen { $sum }. Sieh dir das Stück noch einmal an; berechnet wurde nichts.

# The bar at the foot of the screen.
bar-tick = { $n ->
    [one] noch { $n } abhaken
   *[other] noch { $n } abhaken
  }
bar-tell = dem Gast sagen
bar-hazards = nicht geeignet: entscheiden
bar-sum = sagen, was berechnet wird
bar-ready = bereit
bar-paid = bezahlt
bar-pay = Bezahlen

# Where the sum is none of this table’s.
which-not-ours = Das Tablet zeigte dem Gast { $sum }; so viel haben diese Teile an diesem Tisch nie gekostet. Was wird berechnet?
which-currency = Das Tablet zeigte dem Gast { $sum } in { $currency }; das nimmt dieser Tisch nicht mehr. Was wird berechnet?
which-seen = Was der Gast sah, { $sum }
which-today = Die Preise von heute
which-today-sum = Die Preise von heute, { $sum }

# The price by hand.
price-title = Preis von Hand
price-package = Paket für eine Feier
price-package-of = { $name }: Basis und { $n }, { $price }
price-no-package = Kein Paket
price-package-gone = Ein Paket { $name } gibt es nicht mehr.
price-without-home = Am Stück, ohne Fach: aus einem gemischten Kasten oder vom Gast mitgebracht
price-what = Was es ist
price-its-price = Preis; 0, wenn der Gast es mitgebracht hat
price-add = Dazu
price-off = { $name } abnehmen
price-because = Nachlass geben, wegen
price-reason-friend = Freundschaft
price-reason-flaw = ein kleiner Fehler
price-reason-several = mehrere Stücke
price-reason-host = Dank an die Gastgeberin
price-reason-round = auf eine runde Summe
price-to = Auf { $sum }
price-percent = Prozent
price-percent-off = % Nachlass
price-amount = Betrag
price-amount-off = Nachlass
price-nothing-off = Kein Nachlass

# A piece that was threaded by hand.
sale-title = Neuer Verkauf
sale-no-drop = In { $homes } liegt kein Anhänger. Ein Fach ist der Buchstabe eines Kastens und eine Nummer, wie B3.
sale-no-drops = In { $homes } liegen keine Anhänger. Ein Fach ist der Buchstabe eines Kastens und eine Nummer, wie B3.
sale-quoted = „{ $home }“
sale-does-it-lie = Nach dem Bestand ist „{ $name }“ nicht mehr da. Liegt das Teil vor dir?
sale-begin-with = Mit dem Stück eines Tickets beginnen, nach seiner Nummer
sale-take = Nehmen
sale-only-goods = Nur andere Ware, ohne Stück
sale-base = Basis
sale-who = Für wen es ist
sale-who-under3 = unter 3
sale-who-from3to5 = 3 bis 5 Jahre
sale-who-from6to12 = 6 bis 12 Jahre
sale-who-from13 = 13 oder älter
sale-none-yet = Tippe einen Anhänger an, oder tippe sein Fach ein. Auch die Basis allein lässt sich verkaufen.
sale-homes = Fächer, von links nach rechts
sale-read = Lesen
sale-rub-out = das letzte Zeichen löschen
sale-no-sum = Keine Summe
sale-here = Es ist hier: mitzählen, und zum Bezahlen
sale-to-till = Zum Bezahlen
sale-tray = Kasten { $letter }
sale-none-left = keins mehr
sale-not-counted = nicht gezählt

together-other = { $name } hat dieses Ticket auch offen.
together-own = Du hast dieses Ticket auch auf einem anderen Gerät offen.
together-changed = Seit du hingesehen hast, hat jemand anders dieses Ticket geändert. Von dir wurde nichts eingetragen:
together-look-again = Sieh noch einmal hin und tu es noch einmal, wenn es noch stimmt.
