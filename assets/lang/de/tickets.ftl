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
count-parts = { $n ->
    [one] { $n } Teil
   *[other] { $n } Teile
  }
count-more-parts = { $n ->
    [one] { $n } weiteres Teil
   *[other] { $n } weitere Teile
  }
count-times = { $n ->
    [one] { $n }-mal
   *[other] { $n }-mal
  }
count-minutes = { $n ->
    [one] { $n } Minute
   *[other] { $n } Minuten
  }
count-free-pieces = { $n ->
    [one] { $n } Stück gratis
   *[other] { $n } Stücke gratis
  }
count-files = { $n ->
    [one] { $n } Datei
   *[other] { $n } Dateien
  }
length-both = { $cm } cm · { $inches } in
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
