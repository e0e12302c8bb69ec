# The desk in German: why the ledger refuses.

# The ledger's file and its disk.
ledger-disk-full = die Festplatte ist voll, darum wurde nichts eingetragen; was gespeichert ist, ist sicher. Mach auf diesem Computer Platz und mach es noch einmal
ledger-database = das Kassenbuch ließ sich nicht lesen oder schreiben: { $why }
ledger-damaged = ein Eintrag des Kassenbuchs ist beschädigt: { $why }
ledger-unreadable = Ticket { $number } ist nicht lesbar ({ $why }); was sonst im Kassenbuch steht, ist davon nicht berührt
ledger-damaged-file = das Kassenbuch { $file } ist beschädigt ({ $why }), darum wurde die Kasse nicht gestartet; geändert wurde darin nichts.
ledger-emptied = das Kassenbuch { $file } ist leer oder weg, obwohl dieser Ordner eines hatte, darum wurde die Kasse nicht gestartet. Wurde es ohne ledger.sqlite-wal daneben kopiert, während eine Kasse lief?
ledger-what-to-do = Was du tun kannst: Verschieb jede Datei, deren Name mit „ledger.“ beginnt, aus { $folder } und heb sie auf. Dann entweder
ledger-put-backup = - leg eine Sicherung unter dem Namen ledger.sqlite dorthin (gemacht mit `chatelaine backup`) und starte neu: Was seit dieser Sicherung eingetragen wurde, ist verloren, außer Tickets, die noch auf einem Tablet warten; oder
ledger-begin-anew = - starte ohne neu: Ein neues Kassenbuch beginnt. Tickets, Summen und Anzahlen des alten stehen nicht darin; die PIN wird neu gewählt, und die Tablets werden neu verbunden.
ledger-found-damaged = die Datei des Kassenbuchs ist beschädigt; beende die Kasse und starte sie neu: Dann sagt sie, was zu tun ist
ledger-not-kept = das ließ sich nicht festhalten, und nichts davon ist eingetragen ({ $why }); mach es noch einmal
ledger-panicked = an der Kasse ist etwas schiefgegangen, und nichts davon ist eingetragen; was vorher eingetragen war, ist sicher
ledger-old-library = dieses Programm wurde mit SQLite { $version } gebaut, das einen bestätigten Eintrag verlieren kann; nötig ist 3.51.3 oder neuer
ledger-newer = das Kassenbuch wurde von einer neueren Version dieses Programms geschrieben (Aufbau { $found }, diese kennt { $known })
ledger-older = das Kassenbuch ist von einer älteren Version (Aufbau { $found }, diese hat { $known }); starte die Kasse einmal damit

# Shows.
ledger-last-show = Markt { $show } hat die letzte Nummer, die ein Kassenbuch hat, darum kann ihm keiner folgen; abgeschlossen wurde nichts. Beginne ein neues Kassenbuch
ledger-show-closed = Markt { $show } ist abgeschlossen, und was er war, lässt sich nicht mehr ändern
ledger-no-place-name = „{ $found }“ ist kein Name für einen Ort; schreib bis zu { $most } einfache Zeichen
ledger-no-host-name = „{ $found }“ ist kein Name für eine Gastgeberin; schreib bis zu { $most } einfache Zeichen
ledger-no-fee = { $found } ist keine Standgebühr; schreib einen Betrag von 0 bis { $most } mit höchstens { $digits } Nachkommastellen
ledger-no-float = { $found } ist kein Wechselgeld; schreib einen Betrag von 0 bis { $most } mit höchstens { $digits } Nachkommastellen
ledger-no-tax = { $found } ist keine Steuer; schreib einen Prozentsatz von 0 bis 100 mit höchstens 4 Nachkommastellen

# Tickets.
ledger-sum-not-confirmed = die Summe auf dem Ticket ist keine dieses Tisches; sag zuerst, was verlangt wird
ledger-sum-stands = die Summe auf dem Ticket ist eine dieses Tisches; sie wird verlangt, wie der Gast sie sah
ledger-other-currency = die Summe ist in { $found }, und dieser Tisch nimmt { $taken }; verlang die heutigen Preise oder lass das Ticket gehen
ledger-no-ticket = es gibt kein Ticket { $id }
ledger-no-line = das Ticket hat keine solche Zeile
ledger-state = ein Ticket im Stand „{ $from }“ kann nicht zu „{ $to }“ werden
ledger-closed = ein Ticket im Stand „{ $state }“ lässt sich nicht mehr ändern
ledger-not-ticked = { $n ->
    [one] 1 Teil des Stücks ist noch nicht abgehakt
   *[other] { $n } Teile des Stücks sind noch nicht abgehakt
  }
ledger-not-told = zu dem Stück gibt es Hinweise; hak vor dem Kassieren ab, dass der Gast sie kennt
ledger-not-suitable = das Stück ist nichts für dieses Alter ({ $hazards }); ändere das Stück oder für wen es ist, oder bestätige jedes davon als an Erwachsene verkauft
ledger-forbidden = ein Teil des Stücks darf an niemanden verkauft werden ({ $hazards }); nimm es vom Stück ab
ledger-no-hazard = nichts dieser Art spricht gegen das Stück, wie es jetzt ist
ledger-none-left = die Zählung sagt, dass „{ $name }“ nicht mehr da ist; liegt es vor dir, sag, dass es gefunden wurde
ledger-not-sold = ein Ticket im Stand „{ $state }“ wurde nicht verkauft, darum lässt sich nichts davon zurücknehmen
ledger-opened-otherwise = mit diesem Formular wurde schon ein anderes Stück eröffnet; beginne für dieses einen neuen Verkauf

# Bills.
ledger-no-bill = es gibt keine Rechnung { $id }
ledger-not-on-bill = das Ticket steht nicht auf dieser Rechnung
ledger-with-others = das Ticket steht mit anderem auf einer Rechnung, oder ein Teil davon ist bezahlt; kassiere auf der Rechnung
ledger-long-bill = eine Rechnung hat höchstens { $most } Tickets und { $most } Zeilen; beginne eine neue
ledger-bill-changed = die Rechnung hat sich inzwischen geändert, zu zahlen bleibt { $due }; sieh sie noch einmal an, kassiert wurde nichts
ledger-nothing-to-pay = alles auf der Rechnung ist bezahlt
ledger-no-part = { $amount } ist kein Teil dessen, was zu zahlen ist: Nenne einen Betrag über 0 und bis { $due }, in Münzen, die es gibt
ledger-given-too-little = gegeben wurde { $given }, und zu zahlen ist { $due }; sag, was gegeben wurde, oder nimm einen Teil
ledger-paid-already = das ist ganz oder zum Teil bezahlt; nimm es mit Begründung zurück
ledger-not-paid = das ist noch nicht bezahlt; nimm es herunter
ledger-right-already = diese Zahlung ist schon so vermerkt oder wurde schon berichtigt
ledger-no-reason = sag, warum; ein paar Worte genügen
ledger-no-words = schreib ein paar Worte in eine Zeile, höchstens { $most } Zeichen

# Parts and the catalogue.
ledger-no-count = hier wird nichts gezählt, das „{ $name }“ heißt
ledger-too-many-there = es wären mehr als { $most } davon da, so viele fasst kein Fach
ledger-no-base = im Katalog gibt es keine Basis „{ $name }“
ledger-no-base-like = im Katalog gibt es keine Basis „{ $name }“; meintest du „{ $like }“?
ledger-no-drop = im Katalog gibt es keinen Anhänger „{ $name }“
ledger-no-drop-like = im Katalog gibt es keinen Anhänger „{ $name }“; meintest du „{ $like }“?
ledger-no-fit = der Ring von „{ $name }“ geht nicht von Hand auf „{ $base }“: Er ist { $opens } mm weit, und nötig sind mehr als { $needs } mm
ledger-no-length = „{ $base }“ wird von { $shortest } mm bis { $longest } mm gemacht, nicht mit { $length } mm
ledger-bangle-length = „{ $base }“ ist ein Armreif, der hat keine Länge; lass `length` weg

# Tablets, helpers, numbers.
ledger-nine-kiosks = neun Ziffern sind vergeben oder ruhen bis zum Ende des Markts, weil ihr Tablet freigegeben wurde, und eine gehört der Kasse; schließ den Markt ab, oder verbinde ein freigegebenes Tablet wieder
ledger-no-digit-for-the-desk = Tablets haben alle zehn Ziffern, darum hat die Kasse keine für eigene Nummern; gib ein Tablet frei, dann schließ den Markt ab
ledger-no-name = „{ $name }“ kann kein Name sein: Ein Name hat 1 bis { $most } Zeichen, die man alle sieht, und kein Komma
ledger-name-taken = „{ $name }“ arbeitet hier schon mit; nimm einen anderen Namen, damit die Einträge sagen, wer sie machte
ledger-sellers-name = { $name } ist der Name der Verkäuferin; nimm einen anderen, damit die Einträge sagen, wer sie machte
ledger-staff-full = hier helfen schon { $most } mit; entferne jemanden, der nicht mehr kommt
ledger-nobody = niemand namens „{ $name }“ arbeitet hier mit
ledger-number-shape = eine Ticketnummer hat fünf Ziffern, wie 3-042-6
ledger-number-check = { $number } ist keine Ticketnummer: Eine Ziffer ist falsch, oder zwei sind vertauscht; sieh noch einmal auf das Ticket
ledger-number-range = ein Tablet gibt bei einem Markt die Nummern 000 bis 999; schließ den Markt ab, um neu zu beginnen
