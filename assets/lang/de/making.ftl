# The desk in German: what is made, bought, packed and planned, and the year.

act-bench = Arbeit an der Werkbank
bench-no-form = Dieses Formular ist unvollständig. Öffne die Seite neu; eingetragen ist nichts.
bench-off-list = Streichen
cuts-keep = Als Liste zum Abhaken behalten
cuts-kept = Listen in Arbeit
cuts-done = { $n } von { $all } geschnitten
cuts-changed = Die Spulen sind nicht mehr, wie sie bei diesem Plan waren; plane den Zuschnitt neu. Behalten wurde nichts.
cuts-follow = Hake jede Spule ab, wenn sie geschnitten ist. Mit dem, was darauf bleibt, beginnt der nächste Plan.
cuts-tick = Geschnitten, Zeile { $n }
cuts-away = Diese Liste weglegen

parts-title = Teile und Einkauf
parts-about = { $n ->
    [0] Nichts ist zu machen, also braucht es keine Teile.
    [one] Was 1 Stück, das zu machen ist, aus den Schubladen nimmt.
   *[other] Was { $n } Stück, die zu machen sind, aus den Schubladen nehmen.
  }
parts-buy = Zu kaufen
parts-enough = In den Schubladen ist von allem genug.
parts-short = Fehlt
parts-price = Preis
parts-lots = { $n ->
    [one] 1 Packung, zusammen { $amount }.
   *[other] { $n } Packungen, zusammen { $amount }.
  }
parts-no-offer = In parts.ron ist keine Packung angeboten.
parts-stops = Ohne das geht nicht mehr: { $what }.
parts-in-all = Zusammen
parts-drawers = Was die Menge braucht
parts-needed = Braucht
parts-without = Nicht darin, weil parts.ron kein Rezept hat: { $what }.

made-title = Gemacht und geprüft
made-about = Schreib auf, was du gemacht hast, aus welchen Chargen, und was du geprüft hast. Daran erkennt die Kasse später, in welchen verkauften Stücken eine schlechte Charge stecken kann.
made-what = Was wurde gemacht
made-put-in = Ins Fach legen: Die Zahl wächst um so viele
made-checks = An jedem Stück geprüft
made-check-loops_closed = Ösen und Ringe sind geschlossen
made-check-wire_trimmed = Drahtenden sind gekürzt und eingebogen
made-check-corks_glued = Korken sind geklebt, oder es gibt keine
made-check-end_rings = Endringe halten
made-check-pull = Von Hand gezogen, nichts ging ab
made-lots = Welche Chargen stecken darin
made-lots-hint = Ein Teil, dessen Chargen du weglässt, kann aus jeder sein.
made-note = Notiz
made-keep = Eintragen
made-before = Was vorher gemacht wurde
made-of-lots = Chargen: { $lots }.
made-all-checked = Alles wurde geprüft.
made-not-checked = Nicht geprüft: { $what }.

lots-title = Chargen und Rückruf
lots-find = Welche Stücke haben Charge
lots-look = Suchen
lots-none = Keine Charge heißt in parts.ron „{ $found }“; schreib sie so, wie sie unten in der Liste steht
lots-where = Wo Charge { $lot } stecken kann
lots-used-nowhere = Kein Rezept braucht ein Teil aus dieser Charge.
lots-used-in = Teile daraus stecken in: { $what }.
lots-take-out = Kann noch auf dem Tisch liegen; nimm diese heraus und sieh sie dir an:
lots-sold = { $n ->
    [0] Kein verkauftes Stück kann sie haben.
    [one] 1 verkauftes Stück kann sie haben.
   *[other] { $n } verkaufte Stücke können sie haben.
  }
lots-shown = Verkaufte Stücke { $from } bis { $to } von { $all }, die ältesten zuerst.
lots-by-show = Nach Markt: { $what }.
lots-by-state = Wo sie sind: { $what }.
lots-earlier = Frühere
lots-later = Spätere
lots-all-file = Alle als Tabelle
lots-worst = Stücke in einem Fach lassen sich nicht unterscheiden; darum ist jedes verkaufte genannt, bis alle weg waren. Was nicht aufgeschrieben ist, gilt als das Schlimmste.
lots-bought = Was gekauft wurde
lots-broken = { $all }, davon zerbrochen: { $broken }
lots-paper = Papier: { $paper }.
lots-no-paper = Kein Prüfbericht und keine Erklärung ist vermerkt.
lots-about = Chargen stehen in parts.ron. Bewahre Bericht oder Erklärung des Lieferanten dort auf, wo die Liste es sagt.
lots-children = Stücke für Kinder: wonach zu fragen ist
lots-children-about = Regeln sind in jedem Land anders und ändern sich. Diese Liste sagt, wonach du fragst, und nicht, was für dich gilt.
lots-children-age = Für welches Alter ist es gedacht, und für welches würden andere es halten?
lots-children-test = Welche Prüfungen braucht ein Stück für dieses Alter (Kleinteile, Metalle, Zug), und welches Labor darf sie machen?
lots-children-certificate = Wer muss welches Zertifikat oder welche Erklärung schreiben, und wie lange wird es aufbewahrt?
lots-children-label = Welche Kennzeichnung kommt auf das Stück oder seine Karte (Hersteller, Ort, Tag oder Charge)?
lots-children-small-parts = Welche Worte über Kleinteile stehen auf der Karte und neben dem Tisch?
lots-children-records = Welche Chargen, Prüfungen und Verkäufe müssen wiederzufinden sein, und wie viele Jahre lang?
lots-children-who = Frag die Behörde für Produktsicherheit dort, wo du verkaufst, oder ein anerkanntes Labor. Bis sie es gesagt haben, verkauf nichts als für Kinder gemacht.

packing-title = Packen
packing-about = { $n ->
    [0] Alles auf der Liste ist gepackt.
    [one] 1 Sache ist noch zu packen.
   *[other] { $n } Sachen sind noch zu packen.
  }
packing-again = Nächster Markt: alles auspacken
packing-what = Was noch
packing-spare = Es ist Ersatz
packing-add = Dazuschreiben
packing-usual = Das Übliche dazuschreiben
packing-pack = Gepackt: { $what }
packing-is-spare = Ersatz
packing-forgotten = { $n ->
    [one] einmal vergessen
   *[other] { $n }-mal vergessen
  }
packing-forgot = Vergessen
packing-nothing = schreib, was zu packen ist
packing-usual-chain = Kette auf Spulen, für Längen am Tisch
packing-usual-tools = Zangen, Schneider, Lehre und Maßstab
packing-usual-clasps = Verschlüsse und Ringe als Ersatz
packing-usual-drops = Anhänger als Ersatz in ihren Schachteln
packing-usual-bases = Ketten und Armreifen als Ersatz
packing-usual-float = Wechselgeld in Scheinen und Münzen
packing-usual-tablets = Tablets und der Rechner
packing-usual-chargers = Ladegeräte, Powerbank, Verlängerung
packing-usual-reader = Kartenleser, geladen
packing-usual-lights = Lampen und Spiegel
packing-usual-paper = Druckerpapier, Tüten, Karten
packing-usual-cautions = Gedruckte Warnhinweise und Erlaubnis

plans-title = Kommende Märkte und Aufträge
plans-shows = Kommende Märkte
plans-no-shows = Kein Markt ist geplant.
plans-day = Tag
plans-place = Ort
plans-fee = Standgebühr
plans-deadline = Frist
plans-permit = Nummer der Erlaubnis
plans-note = Notiz
plans-add-show = Markt dazuschreiben
plans-passed = vorbei
plans-is-fee = Gebühr: { $fee }.
plans-is-deadline = Frist: { $day }.
plans-is-permit = Erlaubnis: { $permit }.
plans-no-place = schreib, wo der Markt ist
plans-no-fee = „{ $found }“ ist keine Gebühr; schreib einen Betrag ab 0, etwa 45,00
plans-orders = Aufträge
plans-no-orders = Nichts ist bestellt.
plans-due = Gewünscht bis
plans-agreed = Was ausgemacht ist
plans-number = Nummer
plans-number-hint = Eine Nummer, an der du erkennst, wer bestellt hat, und sonst nichts: kein Name und keine Adresse.
plans-add-order = Auftrag dazuschreiben
plans-done = erledigt
plans-late = zu spät
plans-is-done = Erledigt
plans-nothing-agreed = schreib, was ausgemacht ist
plans-no-number = „{ $found }“ ist keine Nummer; schreib nur Ziffern, höchstens 15, und keinen Namen

year-title = Das Jahr
year-which = Jahr
year-stock-on = Bestand am Ende von
year-show = Zeigen
year-no-year = „{ $found }“ ist kein Jahr; schreib vier Ziffern, etwa 2026
year-no-day = „{ $found }“ ist kein Tag; schreib Jahr, Monat und Tag, etwa 2026-12-31
year-nothing = { $year } wurde nichts verkauft.
year-about = Nach dem Kalender dieses Rechners. Was zurückgenommen oder berichtigt wurde, zählt in dem Quartal, in dem das geschah. Übungen sind nicht darin. Was davon wo zu versteuern ist, sagt dir die Steuerberatung.
year-by-closing = Von manchen Märkten hat eine frühere Fassung nur die Summen behalten: Diese zählen an dem Tag, an dem der Markt abgeschlossen wurde.
year-set-apart = Nicht in diesen Summen, weil es sich nicht addieren ließ (Markt, Nummer, Betrag): { $what }
year-tax = Steuer nach Quartal, Ort und Satz
year-quarter = Quartal
year-q = { $n }. Quartal
year-net = Verkauft, ohne Steuer
year-the-tax = Steuer
year-no-place = Ort nicht genannt
year-rate = { $percent } %
year-rate-unknown = Satz nicht behalten
year-payments = Eingenommen, nach Art der Zahlung
year-taken = Eingenommen, weniger ausgezahlt
year-reductions = Nachlässe und Berichtigtes
year-amount = Betrag
year-off-reductions = Nachlässe insgesamt
year-off-by_hand = Davon von Hand
year-off-taken_back = Zurückgenommen, mit Steuer
year-off-tax_taken_back = Steuer im Zurückgenommenen
year-off-paid_out = Ausgezahlt
year-off-cash_rounding = Rundung beim Bargeld
year-off-deposits = Gezahlt für noch nicht Verkauftes
year-stock = Bestand zu Kosten
year-stock-unknown = Was am Ende von { $day } da lag, ist nicht bekannt: Dieses Kassenbuch hat da noch keine Zahlen behalten.
year-stock-worth = Am Ende von { $day } hatten die Teile in allen fertigen Stücken { $worth } gekostet.
year-stock-no-cost = Ohne { $n } Stück, deren Kosten nicht bekannt sind.
year-stock-about = Nach allen Einkäufen bisher. Deine Stunden, und Teile, die noch in Schubladen liegen, sind nicht darin.
year-stock-since = Zahlen sind seit { $day } bekannt.

act-restore = Eine Sicherung an die Stelle des Kassenbuchs setzen
restore-this = Diese Kopie an die Stelle des Kassenbuchs setzen
restore-about = Beim nächsten Start der Kasse ist alles, wie es in dieser Kopie war: Tickets, Summen, Zahlen, PINs und gekoppelte Tablets. Was seither eingetragen wurde, bleibt in einem Ordner daneben, steht aber auf keiner Seite und in keiner Summe mehr.
restore-do = Beim nächsten Start
restore-waits = Beim nächsten Start der Kasse tritt { $name } an die Stelle des Kassenbuchs. Was bis dahin eingetragen wird, ist nicht darin.
restore-not = Doch nicht
restore-failed = die Kopie „{ $name }“ ist nicht ganz oder von einer anderen Fassung und kann nicht an die Stelle des Kassenbuchs treten; wähle eine andere

hand-over-title = Karte zu Stück { $number }
hand-over-piece = Stück { $number }
card-not-known = Woraus es gemacht ist, ist nicht bekannt.
card-keep = Heb diese Karte auf: An der Nummer erkennt die Werkstatt, woraus das Stück gemacht wurde.
paper-link-card = Karte zum Stück
