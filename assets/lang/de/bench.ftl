# The desk in German: the bench, before and after a show.

tab-bench = Werkbank
bench-how-many = Wie viele machen?
bench-from-shows = { $n ->
    [0] Noch ist kein Markt abgeschlossen: Die Zahlen des Katalogs gelten als Schätzung.
    [one] Aus dem einen Markt bisher. An acht von zehn Märkten wird so viel verlangt, wie der helle Balken reicht.
   *[other] Aus den { $n } Märkten bisher. An acht von zehn Märkten wird so viel verlangt, wie der helle Balken reicht.
  }
bench-usual-show = Irgendein Markt
bench-legend-usual = meist verlangt
bench-legend-there = vorhanden
bench-legend-take = so viele mitnehmen
bench-there = Da
bench-make = Machen
bench-usually = Meist { $from } bis { $to }; alle verkauft: { $percent } %.
bench-basis-shows = { $n ->
    [one] Aus 1 Markt.
   *[other] Aus { $n } Märkten.
  }
bench-basis-sold-out = { $n ->
    [one] Am einzigen Markt ausverkauft: Verlangt war mehr.
   *[other] Aus { $n } Märkten, an { $out } davon ausverkauft: Verlangt war mehr.
  }
bench-basis-sort = Wie sich andere dieser Art verkaufen.
bench-basis-guess = Geschätzt nach deiner Zahl.
bench-how-reckoned = Gemacht werden so viele, dass eines mehr, wenn es übrig bleibt, mehr kosten würde, als es einbrächte. Alle Märkte zählen gleich; Wetter und Jahreszeit rechnest du dazu.
bench-no-recipes = Was die Teile kosten, ist nicht bekannt: parts.ron im Ordner des Katalogs sagt, woraus Anhänger gemacht sind. Bis dahin gilt der halbe Preis als Kosten.
bench-no-numbers = Es lassen sich keine Zahlen ausrechnen: Eine Zahl im Kassenbuch oder im Katalog ist größer als an irgendeinem Markt.
bench-after = Nach den Märkten
bench-restock = Was nachzumachen ist
bench-close-out = Der Abschluss dieses Markts
bench-file-wrong = parts.ron hat Fehler; die Werkbank geht ohne sie
bench-cuts = Spulen zuschneiden
after-net = Verkauft, ohne die Steuer
after-parts = Teile darin
after-fee = Standgebühr
after-reward = Dank an die Gastgeber
after-for-work = Bleibt für deine Arbeit
after-work = Deine Stunden zu deinem Satz
after-beyond = Über deine Stunden hinaus
after-without-cost = { $n ->
    [one] 1 Stück ist nicht in diesen Kosten: parts.ron hat kein Rezept oder keinen Posten dafür.
   *[other] { $n } Stück sind nicht in diesen Kosten: parts.ron hat kein Rezept oder keinen Posten dafür.
  }
after-todays-costs = Die Kosten sind die von heutigen Rezepten und Posten. Die Fahrt ist nicht dabei.
after-by-sort = Was verkauft wurde, nach Art
after-sort = Art
after-sold = Verkauft
after-margin = Verdient
after-by-home = Was verkauft wurde, nach Fach
cuts-from = Schneiden von
cuts-length = Länge, wie 18in oder 45cm
cuts-count = Wie viele
cuts-hint = Was leer bleibt, wird nicht geschnitten. Was von einer Spule bleibt und lang genug ist, ist für später.
cuts-plan = Zuschnitt planen
cuts-better = Besseren Plan suchen
cuts-searching = Suche seit { $n } s. Der Plan unten ist schon gut.
cuts-searching-so-far = Suche seit { $n } s: Das Beste bisher liegt höchstens { $percent } % über dem besten Plan, den es geben kann.
cuts-stop = Anhalten und das Beste bisher zeigen
cuts-list = Schneiden und abhaken
cuts-spool = Von { $length }:
cuts-times = { $n } × { $length }
cuts-stays = { $length } bleiben daran
cuts-lost = { $length } sind verloren
cuts-missing = Die Spulen reichen nicht. Es fehlen: { $what }.
cuts-sum = Von den Spulen genommen: { $drawn }, davon verloren: { $lost }.
cuts-proven = Kein Plan verliert weniger.
cuts-gap = Höchstens { $percent } % über dem besten Plan, den es geben kann.
cuts-no-length = „{ $found }“ ist keine Länge; schreib 18in oder 45cm.
cuts-no-count = Wie viele von { $length } verlangt sind, ist nicht zu lesen; schreib eine ganze Zahl bis 10000.
cuts-impossible = Von „{ $part }“ lässt sich das nicht schneiden; wähl, was auf Spulen liegt, und Längen über null.
backup-title = Sicher aufheben
backup-about = Die Kopie enthält alles, was die Kasse gebucht hat, wird gegengelesen und bleibt neben dem Kassenbuch. Leg sie auch woanders ab: auf einem Stick, einem anderen Computer. Darin sind auch Schlüssel, also behalt die Kopie für dich.
backup-do = Jetzt kopieren
backup-save = Woanders ablegen
backup-none = Es gibt noch keine Kopie des Kassenbuchs.
backup-old = Die letzte Kopie des Kassenbuchs ist vom { $day }.
backup-failed = Das Kassenbuch ließ sich nicht kopieren, und keine Kopie wurde behalten; sieh nach, wie viel Platz noch ist.
backup-restore = Eine Kopie, die woanders liegt, tritt mit chatelaine restore --from DATEI an die Stelle des Kassenbuchs, solange die Kasse nicht läuft. Was sie ersetzt, bleibt in einem Ordner daneben.
bench-nothing-to-make = Nichts muss gemacht werden: Von allem ist genug da.
bench-enough = Genug ist da
