# The desk in German: the show, practice, trays.

# What a show is.
show-title = Markt
show-kind-fair = Kunsthandwerkermarkt
show-kind-open_house = offene Werkstatt
show-kind-home_party = Party zu Hause
show-kind-childrens_party = Kinderfest
show-kind-practice = Übung
show-name = Markt { $show }
show-name-at = Markt { $show }, { $place }
show-practice = Übung
show-no-tax = hier keine Steuer
show-tax = hier { $percent } % Steuer
show-float = Anfangsbestand { $amount }
show-fee = Standgebühr { $amount }
show-host = Gastgeberin: { $host }
show-since = Läuft seit { $when }
show-what-it-is = Was es ist
show-change = Ändern
show-which = Was ist das für ein Markt?
show-which-hint = Ort, Steuer, Standgebühr und Anfangsbestand gehören dann dazu. Es geht auch ohne, mit der Steuer des Tisches.
show-close = Den Markt abschließen
show-practise = Üben
show-earlier = Frühere Märkte

# Telling what it is.
about-title = Was für ein Markt ist es?
about-ask = Was ist Markt { $show }?
about-kind = Welche Art Veranstaltung
about-not-told = nicht gesagt
about-place = Wo der Tisch steht
about-place-hint = etwa: Mühlgasse, Halle 2
about-tax = Steuer am Ort, in Prozent
about-own-none = leer: Der Tisch weist keine Steuer aus
about-own-added = zusätzlich zu den ausgezeichneten Preisen; leer: { $percent } %, wie der Tisch es hat
about-own-included = in den ausgezeichneten Preisen enthalten; leer: { $percent } %, wie der Tisch es hat
about-on-top = zusätzlich zu den ausgezeichneten Preisen
about-contained = darin enthalten
about-float = Bargeld in der Kasse vor dem ersten Verkauf ({ $currency })
about-float-hint = der Anfangsbestand
about-fee = Standgebühr ({ $currency })
about-fee-hint = was der Platz kostet
about-host = Gastgeberin
about-host-hint = eine Bezeichnung für die Belohnung, etwa: Gastgeberin in der Mühlgasse; ein Name ist nicht nötig
about-keep = Das behalten
about-hint = Was leer bleibt, ist nicht gesagt. Alles lässt sich ändern, solange der Markt läuft; jede Änderung wird eingetragen.
typed-no-fee = „{ $found }“ ist keine Standgebühr; schreib einen Betrag bis { $most }, wie { $like }.
typed-no-float = „{ $found }“ ist kein Anfangsbestand; schreib einen Betrag bis { $most }, wie { $like }.
typed-no-sum = „{ $found }“ ist keine Summe Bargeld; schreib einen Betrag bis { $most }, wie { $like }.
typed-no-tax = „{ $found }“ ist keine Steuer; schreib einen Prozentsatz von 0 bis 100, wie { $like }.
typed-no-count = „{ $found }“ ist keine Anzahl von { $piece }; schreib eine ganze Zahl.

# Counting the cash and closing.
close-title = Den Markt abschließen?
close-ask = Markt { $show } abschließen?
close-open = { $n ->
    [0] Kein Ticket ist offen.
    [one] 1 Ticket ist noch offen; es wird verworfen, und seine Anhänger sind wieder frei.
   *[other] { $n } Tickets sind noch offen; sie werden verworfen, und ihre Anhänger sind wieder frei.
  }
close-next = Der nächste Markt beginnt sofort, und seine Nummern fangen neu an.
close-cash = Das Bargeld
cash-before = In der Kasse vor dem ersten Verkauf
cash-moved = Eingenommen, abzüglich Ausgezahltem
cash-should-be = Soll
close-counted = In der Kasse gezählt ({ $currency })
close-counted-hint = Leer: nicht gezählt, oder unten Schein für Schein.
close-pieces = Scheine und Münzen zählen
close-not-alike = Schein für Schein sind es { $pieces }, und als Summe steht da { $sum }; zähl noch einmal oder lass eines davon leer.
refused-not-running = Markt { $show } ist nicht der laufende

# A show’s sums.
sums = Summen
sums-rung-up = Tickets kassiert
sums-let-go = Verworfen
sums-let-go-closing = { $n }, davon { $closing } beim Abschluss
sums-cash = Bar
sums-card = Mit Karte
sums-way = Mit „{ $way }“
sums-paid-out = Davon wieder ausgezahlt
sums-owing = Bezahlt für noch nicht Verkauftes
sums-tax = Steuer darin
sums-rate = { $rate } % auf { $net }
sums-discounts = Rabatte und Nachlässe
sums-back = { $n ->
    [one] Zurückgenommen, einmal
   *[other] Zurückgenommen, { $n }-mal
  }
sums-rounding = Rundung beim Bargeld
sums-taken = Einnahmen
sums-late = Davon spät, von früheren Märkten
sums-late-tickets = { $n ->
    [one] 1 Ticket, { $amount }
   *[other] { $n } Tickets, { $amount }
  }
sums-kept-open = Offen geblieben, zum Teil bezahlt
sums-let-go-earlier = Verworfen, von früheren Märkten
sums-set-apart = Für Ticket { $number } wurden { $charged } berechnet, die in keiner dieser Summen stehen: Es ist eine andere Währung, oder kein Verkaufstisch nimmt so viel ein.
sums-too-large = zu groß zum Zusammenzählen
cash-title = Bargeld
cash-counted = Gezählt
cash-agrees = Es stimmt
cash-missing = Fehlt
cash-too-much = Zu viel
cash-difference = Unterschied
cash-not-counted = nicht gezählt
earned = Was bleibt
earned-title = Nach Steuer, Standgebühr und Belohnung
earned-sold = Verkauft, ohne Steuer
earned-fee = Standgebühr
earned-reward = Belohnung der Gastgeberin
earned-pieces-up-to = { $n ->
    [one] 1 Stück gratis, bis { $amount }
   *[other] { $n } Stücke gratis, je bis { $amount }
  }
earned-left = Bleibt
earned-profit = Gewinn, vor deinen Stunden
earned-profit-hint = Die Teile zählen nach heutigen Rezepten und Posten. Deine Stunden und die Fahrt sind nicht dabei.
earned-hint = Was die Teile gekostet haben, ist nicht oder nicht von allen bekannt; das ist also nicht der Gewinn.
sold-title = Verkauft, nach Fach
sold = Verkauft
sold-by-sort-title = Verkauft, nach Art
sold-by-sort = Verkauft nach Art
sold-what = Was
sold-home = Fach
sold-part = Teil
sold-back = Zurück
sold-left = Übrig
sold-marked = Laut Preis
sold-sort = Art
sold-sort-base = Basen
sold-sort-Charm = Motive
sold-sort-Bead = Perlen
sold-sort-Vial = Fläschchen
sold-sort-Locket = Medaillons
sold-sort-Key = Schlüssel
sold-sort-Crystal = Kristalle
sold-sort-Tassel = Quasten
sold-sort-Found = Fundstücke

# A closed show.
closed-title = Abschluss von Markt { $show }
closed-title-at = Abschluss von Markt { $show }, { $place }
closed-practice = Abschluss der Übung
closed-when = { $table }, abgeschlossen { $when }
closed-came-late = Spät gekommen
closed-came-after = Nach dem Abschluss gekommen
closed-came-after-hint = Diese stehen nicht in den Summen oben. Jedes zählt auf dem Markt, auf dem es kassiert wurde.
closed-came-to = { $state } auf Markt { $show }
closed-left = Alles, was übrig war
closed-print = Drucken
closed-to-running = Zum laufenden Markt
files = Dateien
files-hint = Tabellen für ein Rechenblatt: Beträge mit Punkt, wie 8.50, oder mit Komma, wie 8,50.
files-lines = Was verkauft wurde, nach Fach
files-tickets = Alle Tickets
files-money = Das Geld
files-tax = Die Steuer nach Satz
files-left = Was übrig ist
files-all = Alles zusammen (JSON)
refused-nothing-called = an dieser Kasse gibt es nichts mit dem Namen „{ $name }“
refused-not-closed = Markt { $show } ist an dieser Kasse nicht abgeschlossen worden
refused-no-show = an dieser Kasse gibt es keinen Markt { $show }
refused-no-file = die Datei konnte nicht erstellt werden

# Practice.
practice-ask = Üben?
practice-ask-text = An Kasse und Tablets geht alles wie immer, und nichts davon zählt: Kein Bestand wird weniger, keine Nummer verbraucht, und auf jedem Bildschirm steht „Übung“. Solange sie dauert, kann nichts wirklich verkauft werden.
practice-open-wait = { $n ->
    [one] Das offene Ticket wartet, bis die Übung endet.
   *[other] Die { $n } offenen Tickets warten, bis die Übung endet.
  }
practice-begin = Übung beginnen
practice-end-text = Alles, was seit Beginn der Übung geschah, wird am Ende verworfen; dann ist alles wie zuvor.
practice-end = Übung beenden
