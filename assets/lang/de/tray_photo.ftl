# The desk in German: a tray by one photo.

photo-busy = Gerade wird an einem anderen Foto gearbeitet. Schick deines gleich noch einmal.
tray-photo-title = Kasten { $letter } mit einem Foto
tray-photo-how = Nimm den Kasten gerade von oben auf, alle vier inneren Ecken im Bild, in gleichmäßigem Licht und ohne Blitz. In jedem Fach eine Sorte, wenige davon, und nicht übereinander.
tray-photo-take = Das Foto jetzt aufnehmen
tray-photo-choose = Oder eines wählen, das schon da ist
tray-photo-send = Das Foto lesen
tray-photo-stays-here = Das Foto bleibt auf diesem Rechner, ohne den Ort der Aufnahme, bis seine Bilder auf dem Tisch liegen oder du es wegwirfst.
tray-photo-begun = Angefangene Fotos
tray-photo-of = Mit dem Foto von { $time } weitermachen
tray-photo-none = Wähle zuerst ein Foto.
tray-photo-gone = dieses Foto ist nicht mehr da; nimm es noch einmal auf
tray-photo-no-corners = Die vier Ecken ergeben keinen Kasten: setze sie der Reihe nach um ihn herum.
tray-photo-no-grid = Ein Foto zeigt höchstens 30 Reihen und Spalten und 300 Fächer. Teile den Kasten in zwei.
tray-photo-no-width = Tippe die innere Breite des Kastens in Millimetern, von 40 bis 2000.
tray-photo-no-number = Eine Ecke liegt zwischen 0 und 100 Prozent des Fotos.
tray-photo-corners = Die Ecken von Kasten { $letter }
tray-photo-found = Die Ecken wurden gefunden. Zieh sie zurecht, wo sie nicht stimmen.
tray-photo-not-found = Die Ecken wurden nicht gefunden. Zieh jede an eine innere Ecke des Kastens.
tray-photo-turn = Um ein Viertel drehen
tray-photo-turn-hint = bis { $home } in seinem Fach steht
tray-photo-width = Innere Breite des Kastens, von links nach rechts, in Millimetern
tray-photo-cut = Alles ausschneiden
tray-photo-by-number = Ecken als Zahlen
tray-photo-across = Ecke { $n }: von links, in Prozent
tray-photo-down = Ecke { $n }: von oben, in Prozent
tray-photo-seen = Das Foto, darüber gezeichnet die Wände des Kastens
tray-photo-throw-away = Dieses Foto wegwerfen
tray-photo-pieces = Was Kasten { $letter } zeigt
tray-photo-tally = { $cut } ausgeschnitten, { $tiles } als Kärtchen.
tray-photo-nothing-seen = In keinem Fach wurde etwas erkannt. Setze die Ecken neu, oder nimm ein anderes Foto auf.
tray-photo-take-all = Alle so übernehmen
tray-photo-mend-hint = Berühre eines, das nicht stimmt.
tray-photo-corners-again = Die Ecken neu setzen
tray-photo-stays = bleibt, wie es ist
tray-photo-empty = nichts erkannt
tray-photo-tile = als Kärtchen
tray-photo-whole = ganzes Fach
tray-photo-mix = { $n ->
    [0] eine Mischung, nichts getrennt
   *[other] eine Mischung, { $n } getrennt
  }
tray-photo-sure = sicher
tray-photo-unsure = nicht sicher
tray-photo-mend = Das Bild von { $home }
tray-photo-mend-head = sein Bild
tray-photo-strokes = Streich über das, was fehlt, um es zu behalten, oder über das, was zu viel ist, um es wegzunehmen.
tray-photo-strokes-do = Was ein Strich tut
tray-photo-keep = Behalten
tray-photo-drop = Wegnehmen
tray-photo-stroke-back = Letzten Strich weg
tray-photo-whole-seen = Das Fach, wie es im Foto ist, zum Darüberstreichen
tray-photo-cut-again = Neu ausschneiden
tray-photo-as-cut = Ausgeschnitten
tray-photo-as-tile = Als Kärtchen
tray-photo-as-whole = Ganzes Fach
tray-photo-as-mix = Als Mischung
tray-photo-as-nothing = Kein Bild von hier
tray-photo-nothing-left = Davon bleibt nichts übrig. Nimm einen Strich weg, oder zeig es als Kärtchen.
tray-photo-no-strokes = Streich zuerst über das Bild.
tray-photo-prices = Preise für Kasten { $letter }
tray-photo-priced = { $n } von { $of } haben einen Preis.
tray-photo-has-price = hat einen Preis
tray-photo-all-priced = { $n ->
    [0] Hier braucht nichts einen Preis.
   *[other] Alle { $n } haben einen Preis.
  }
tray-photo-same-price = Wieder { $price }
tray-photo-leave-out = { $home } leer lassen
tray-photo-to-pieces = Zu den Bildern
tray-photo-lay = { $n ->
    [one] Auf den Tisch legen
   *[other] Alle { $n } auf den Tisch legen
  }
table-did-photo = { $n ->
    [one] 1 Bild aus einem Foto von Kasten { $letter }
   *[other] { $n } Bilder aus einem Foto von Kasten { $letter }
  }
named-name = { $colour } { $sort }
named-name-sized = { $size } { $colour } { $sort }
named-mix = Gemischte Anhänger
named-gender-Charm = m
named-gender-Bead = f
named-gender-Vial = n
named-gender-Locket = n
named-gender-Key = m
named-gender-Crystal = m
named-gender-Tassel = f
named-gender-Found = n
named-small = { $gender ->
    [f] kleine
    [n] kleines
   *[m] kleiner
  }
named-large = { $gender ->
    [f] große
    [n] großes
   *[m] großer
  }
named-colour-Golden = { $gender ->
    [f] goldene
    [n] goldenes
   *[m] goldener
  }
named-colour-Silvery = { $gender ->
    [f] silberne
    [n] silbernes
   *[m] silberner
  }
named-colour-Coppery = { $gender ->
    [f] kupferfarbene
    [n] kupferfarbenes
   *[m] kupferfarbener
  }
named-colour-Clear = { $gender ->
    [f] klare
    [n] klares
   *[m] klarer
  }
named-colour-White = { $gender ->
    [f] weiße
    [n] weißes
   *[m] weißer
  }
named-colour-Black = { $gender ->
    [f] schwarze
    [n] schwarzes
   *[m] schwarzer
  }
named-colour-Red = { $gender ->
    [f] rote
    [n] rotes
   *[m] roter
  }
named-colour-Pink = { $gender ->
    [f] rosafarbene
    [n] rosafarbenes
   *[m] rosafarbener
  }
named-colour-Orange = { $gender ->
    [f] orangefarbene
    [n] orangefarbenes
   *[m] orangefarbener
  }
named-colour-Yellow = { $gender ->
    [f] gelbe
    [n] gelbes
   *[m] gelber
  }
named-colour-Green = { $gender ->
    [f] grüne
    [n] grünes
   *[m] grüner
  }
named-colour-Blue = { $gender ->
    [f] blaue
    [n] blaues
   *[m] blauer
  }
named-colour-Violet = { $gender ->
    [f] violette
    [n] violettes
   *[m] violetter
  }
named-colour-Brown = { $gender ->
    [f] braune
    [n] braunes
   *[m] brauner
  }
