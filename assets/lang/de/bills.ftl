# The desk in German: bills, paying and sales.

# Ways to pay, amounts, cash that is given.
way-cash = Bar
way-card = Karte
paid-in-cash = bar
paid-by-card = mit Karte
paid-by-way = mit „{ $way }“
cash-given = Gegebenes Bargeld
change-due = Gegeben { $given }, Wechselgeld { $change }
refused-way = mit „{ $name }“ kann hier nicht bezahlt werden; sende eines von { $ways }

# What is typed as an amount and is none, and sums that can’t be: the beginning of a sentence each.
amount-no-price = „{ $found }“ ist kein Preis; schreib „8,50“
amount-not-above-zero = „{ $found }“ ist kein Preis über null
amount-above-most = „{ $found }“ ist kein Preis bis { $most }
amount-decimals = { $n ->
    [0] „{ $found }“ ist kein Preis in { $currency } ohne Nachkommastellen
   *[other] „{ $found }“ ist kein Preis in { $currency } mit höchstens { $n } Nachkommastellen
  }
amount-no-percent = „{ $found }“ ist kein Prozentsatz von 0 bis 100; schreib „6,25“
money-price = der Preis { $price } von „{ $id }“ liegt nicht zwischen 0 und { $most }
money-too-large = die Summe ist größer als { $most }
money-decimals = { $amount } hat mehr Nachkommastellen als die Währung
money-absurd = kein Verkaufstisch nimmt { $amount } ein
money-lines = die Summe ist nicht die ihrer Zeilen
money-percent = ein Nachlass von { $percent } Prozent liegt nicht zwischen 0 und 100 Prozent
money-below-zero = { $amount } ist weniger als null; ein Nachlass nimmt null oder mehr weg und lässt null oder mehr übrig
money-above-total = { $wish } ist mehr als die Summe von { $total }; ein Nachlass nimmt nur weg
money-too-little = { $given } sind gegeben, { $missing } weniger als fällig
money-reward-percent = eine Belohnung von { $percent } Prozent liegt nicht zwischen 0 und 100 Prozent
money-reward-sum = { $amount } ist keine Summe für Gratisstücke; schreib eine über 0 und bis { $most }
reduce-how-much = Sag, wie viel nachgelassen wird: auf eine runde Summe, in Prozent oder ein Betrag.

# A bill and what is on it.
bill-title = Rechnung { $number }
bill-items = Auf der Rechnung
bill-gifts = Geschenke, einzeln verpackt
bill-to-ticket = zu Ticket { $number }
bill-gift = Geschenk
bill-no-gift = Kein Geschenk
bill-ticket-off = { $number } von der Rechnung nehmen
bill-take-back = Zurücknehmen
bill-parts-to-tick = { $n ->
    [one] 1 Teil abzuhaken
   *[other] { $n } Teile abzuhaken
  }
bill-tell-cautions = den Gast auf die Hinweise aufmerksam machen
bill-say-sum = sagen, was berechnet wird
bill-not-for-wearer = so noch nicht für dieses Alter
bill-goods = Andere Waren
bill-goods-off = { $words } abnehmen
bill-empty = Noch steht nichts darauf: Füge ein Ticket mit seiner Nummer hinzu oder Waren mit ihrem Preis.
bill-more = Zur Rechnung hinzufügen
bill-add-ticket = Ein Ticket mit seiner Nummer hinzufügen
bill-add-goods = Waren ohne Fach hinzufügen
bill-add = Hinzufügen
bill-goods-what = Was es ist
bill-goods-example = Geschenkschachtel
bill-goods-price = Der Preis
bill-no-such-ticket = An dieser Kasse ist noch kein Ticket { $number } angekommen.
bill-ticket-not-open = Ticket { $number } ist nicht mehr offen.
bill-tickets-alike = Mehrere offene Tickets haben die Nummer { $number }: Öffne das gemeinte und seine Rechnung.

# Its sum, and how it is paid.
bill-sum = Die Summe
bill-taken-off = Nachlass auf Waren
bill-taken-off-because = Nachlass auf Waren, { $reason }
bill-tax = Steuer in allem
bill-total = Summe
bill-so-far = Bezahlt
bill-to-pay-out = Auszuzahlen
bill-left = Noch zu zahlen
bill-paid = Bezahlt.
bill-next-guest = Nächster Gast
bill-pay-out = Auszahlen
bill-or-given = Oder das gegebene Bargeld
bill-reduce-goods = Auf die Waren etwas nachlassen
bill-or-part = Oder ein Teil davon: eine Anzahlung oder der erste von zwei Wegen

# Money that moved, and what was put right.
bill-payments = Zahlungen
bill-money = Geld
bill-put-right = Berichtigt
bill-why-sale = bezahlt
bill-why-part = ein Teil davon
bill-why-paid-out = ausgezahlt
bill-why-not-this-way = wieder ausgetragen: Es war ein anderer Weg
bill-why-this-way = berichtigt
bill-in-show = auf Markt { $show }
bill-other-way = Es war ein anderer Weg
bill-why = Warum
bill-wrong-button = falsche Taste getippt
bill-piece-back = Stück { $number } zurückgenommen.
bill-some-piece-back = Ein Stück zurückgenommen.
bill-part-back = { $name } zurückgenommen.
bill-some-drop-back = Ein Anhänger zurückgenommen.
bill-some-goods-back = Waren zurückgenommen.
bill-way-put-right = Der Zahlungsweg berichtigt.
bill-because = Grund: { $reason }.
bill-parts-home = Die Teile liegen wieder in ihren Fächern.
bill-parts-gone = Die Teile sind weg.

# Refunds and exchanges.
back-of-bill = Von Rechnung { $number }.
back-what = Was zurückkommt
back-whole-piece = Das ganze Stück, { $number }
back-parts = Die Teile
back-parts-home = liegen wieder in ihren Fächern und können verkauft werden
back-parts-gone = sind kaputt oder weg
back-reason-mind = anders überlegt
back-reason-broke = ging kaputt
back-reason-too-much = eine Zeile zu viel
back-reason-size = falsche Größe
back-reason-present = ein Geschenk, das nicht passte
back-pay-out = Auszahlen
back-not-yet = Noch nicht: Etwas anderes kommt dafür
refused-back = sag, was zurückkommt

# Finding a sale again.
sales-title = Verkäufe
sales-find = Einen bezahlten Verkauf finden
sales-fill-in = Trag ein, was du davon weißt.
sales-number = Nummer
sales-sum = Summe
sales-day = Tag
sales-home = Fach eines Anhängers
sales-show = Markt
sales-search = Suchen
sales-found = Gefunden
sales-none = So einen bezahlten Verkauf gibt es nicht.
sales-newest = Die neuesten { $n } sind zu sehen; schreib mehr über den Verkauf, um einen älteren zu finden.
sales-in-show = Markt { $show }
sales-open = Öffnen
sales-no-show = „{ $found }“ ist kein Markt; schreib seine Nummer, wie 3.
sales-no-day = „{ $found }“ ist kein Tag; schreib ihn wie 2026-05-31.
sales-no-home = „{ $found }“ ist kein Fach; schreib den Buchstaben des Kastens und die Nummer des Fachs, wie „B3“.
