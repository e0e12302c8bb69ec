# The desk in German: what all pages of the desk share.

# Navigation and what stands on every page.
tab-tickets = Tickets
tab-trays = Kästen
tab-show = Markt
tab-kiosks = Tablets
pages = Seiten
sign-out = Abmelden
do-it = Ausführen
go-back = Zurück
to-tickets = Zu den Tickets
understood = Verstanden
practice-on = Übung: Nichts zählt.
practice-ends-below = Unten wird sie beendet.
practice-end-there = Auf der Seite „Markt“ beenden
practice-cut-short = Die Kasse wurde beendet, während geübt wurde. Das Geübte ist verworfen; alles andere ist, wie es war.
catalogue-mistakes = { $n ->
    [one] Der Katalog hat 1 Fehler; der letzte gute ist in Gebrauch.
   *[other] Der Katalog hat { $n } Fehler; der letzte gute ist in Gebrauch.
  }
see-mistakes = Ansehen, was falsch ist
tickets-not-taken = { $n ->
    [one] 1 Ticket auf den Tablets wurde nicht angenommen.
   *[other] { $n } Tickets auf den Tablets wurden nicht angenommen.
  }
see-not-taken = Ansehen und annehmen
battery-low-here = Der Akku dieses Computers hat noch { $n } %. Steck das Ladegerät ein.
battery-low-tablet = Der Akku von Tablet { $digit } hat noch { $n } %. Steck das Ladegerät ein.
battery-charging = Akku { $n } %, Ladegerät eingesteckt
battery-alone = Akku { $n } %, kein Ladegerät eingesteckt
back-to-kiosk = Zurück zum Tablet-Bildschirm der Gäste
refused-way-back = auf diesem Computer läuft kein Bildschirm für Gäste
disk-nearly-full-here = Die Festplatte dieses Computers ist fast voll. Mach bald Platz: Ist sie voll, kann kein Ticket mehr eingetragen werden.

# A refusal, and the seller’s PIN for one act.
not-done-title = Nicht ausgeführt
not-done = Das wurde nicht ausgeführt
refused-sign-in = melde dich zuerst an
refused-language = in dieser Sprache gibt es keine Seiten
refused-number = das ist keine Ticketnummer
refused-no-number = kein Ticket dieses Markts hat diese Nummer
sellers-pin = Die PIN der Verkäuferin
needs-sellers-pin = Dafür braucht es die PIN der Verkäuferin
sellers-to-do = { $what } ist Sache der Verkäuferin
sellers-this-once = { $what } ist Sache der Verkäuferin. Mit ihrer PIN geht es dieses eine Mal, und du bleibst als { $helper } angemeldet.
act-take-back = Bezahltes zurückzunehmen
act-other-way = Eine Zahlung zu berichtigen
act-reduce = So viel nachzulassen
act-other-sum = Eine Summe zu berechnen, die keine dieses Tischs ist
act-about-show = Zu sagen, was für ein Markt es ist
act-close-show = Einen Markt abzuschließen
act-practise = Eine Übung zu beginnen
act-end-practice = Die Übung zu beenden
act-pair = Ein Tablet zu verbinden
act-release = Ein Tablet freizugeben

# What the page’s script says.
script-silent = Keine Antwort von der Kasse seit { $time }. Es wird von selbst wieder versucht.
script-waiting = Die Kasse hat noch nicht geantwortet…
script-lost = „{ $what }“ ist vielleicht nicht angekommen.
script-unsure = Die Kasse hat auf „{ $what }“ nicht geantwortet. Sieh nach, ob es geschehen ist.
script-again = Noch einmal eintragen
script-leave = So lassen
script-signed-out = Du wurdest abgemeldet, bevor „{ $what }“ eingetragen war.
script-enter = Jetzt eintragen
script-five-digits = Eine Ticketnummer hat fünf Ziffern, wie 3-042-6.
script-wrong-digit = { $typed } ist keine Ticketnummer: Eine Ziffer ist falsch oder zwei sind vertauscht; sieh noch einmal auf das Ticket.
ago-now = gerade eben
script-minutes = vor { $n } min
script-hours = vor { $h } h { $n } min
script-new-above = { $n } neu oben
script-new-below = { $n } neu unten
script-new-ticket = Neues Ticket { $what }
script-new-tickets = Neue Tickets: { $what }
script-more-waiting = Neue Tickets am Ende; { $n } warten
