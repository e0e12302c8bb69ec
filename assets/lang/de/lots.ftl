# The desk in German: lots as they are written down, and spools that are promised.

lot-write = Einen Posten aufschreiben
lot-part = Teil
lot-name = Nummer, die der Lieferant dem Posten gibt
lot-day = Tag, an dem er kam
lot-amount = Wie viel kam: Stück, oder die Länge wie 20m
lot-count = Wie viele Stück kamen
lot-length = Länge, die kam, wie 20m
lot-spools = Auf wie vielen Spulen, wenn es nach Länge geht
lot-broken = Davon kaputt: Stück, oder Millimeter
lot-price = Was alles zusammen gekostet hat, in { $currency }
lot-paper = Prüfbericht oder Erklärung des Lieferanten
lot-paper-hint = Welches Papier, und wo du es aufhebst. Das zeigst du, wenn jemand nach diesem Posten fragt.
lot-put-away = Was heil ist, in die Lade zählen oder zu den Spulen auf der Werkbank
lot-keep = Behalten
lot-change = { $lot } ändern
lot-strike = Diesen Posten streichen
lot-drawers-stay = Lade und Spulen bleiben, wie sie sind; nur die Angaben zum Posten ändern sich.
lot-did-write = Posten { $lot } aufgeschrieben
lot-did-change = Posten { $lot } geändert
lot-did-strike = Posten { $lot } gestrichen
lot-no-part = So heißt kein Teil; wähl eines aus der Liste. Teile stehen in parts.ron.
lot-no-name = Schreib, wie der Lieferant den Posten nennt, mit höchstens { $most } Zeichen.
lot-no-amount = Schreib, wie viele von „{ $part }“ kamen, ab 1.
lot-too-broken = Es ist mehr kaputt, als kam; schreib, wie viel davon kaputt war.
lot-no-spools = „{ $found }“ ist keine Zahl von Spulen; schreib eine von 1 bis { $most }.
lot-no-paper = Schreib mit höchstens { $most } Zeichen, welches Papier es ist und wo es liegt.
lot-there = Posten { $lot } dieses Teils von diesem Tag ist schon aufgeschrieben; ändere ihn dort
lot-none = einen Posten „{ $lot }“ dieses Teils von diesem Tag gibt es nicht
lot-no-workshop = im Ordner des Katalogs liegt noch keine parts.ron, die sagt, woraus Anhänger gemacht sind
lot-file-wrong = parts.ron hat Fehler, die die Seiten der Werkbank zeigen; behebe sie zuerst, nichts wurde geschrieben

cuts-promised = { $n ->
    [one] Nicht dabei, weil eine begonnene Liste davon schneidet: { $what }.
   *[other] Nicht dabei, weil begonnene Listen davon schneiden: { $what }.
  }
cuts-not-there = Eine Spule oder ein Rest von { $length } liegt nicht mehr da: Eine andere Liste hat davon geschnitten, oder die Spulen wurden neu gezählt. Nichts wurde abgehakt; leg diese Liste weg und plan neu.
cuts-rest-gone = Was von dieser Spule übrig war, { $length }, ist inzwischen weiter geschnitten, also bleibt der Haken. Nichts wurde geändert.
