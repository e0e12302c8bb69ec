# Die Kasse auf Deutsch: warum das Ticket eines Tablets nicht angenommen wurde, und was bei einem Fehler in den Dateien zu tun ist.

not-taken-same-id = unter derselben Kennung kam ein anderes Ticket an
not-taken-same-number = ein anderes Ticket des Markts hat die Nummer
not-taken-other-lines = die Summe und das Stück haben nicht dieselben Posten
not-taken-unknown-show = das Ticket gehört zu einem Markt, den diese Kasse nicht kennt
not-taken-other-currency = die Summe ist in { $found }, was dieser Tisch nie angenommen hat; er nimmt { $taken }
not-taken-odd-id = „{ $found }“ ist keine Kennung: Kennungen haben kleine Buchstaben, Ziffern und Bindestriche
not-taken-many-drops = { $n } Anhänger sind an keinem Stück, höchstens { $most }
not-taken-odd-length = eine Länge von { $mm } mm lässt sich nicht machen; möglich sind { $least } mm bis { $most } mm
not-taken-odd-neck = ein Hals von { $mm } mm ist niemandes Hals; sie haben { $least } mm bis { $most } mm
not-taken-other-digit = die Nummer hat die Ziffer eines anderen Tablets
not-taken-not-asked = an der Kasse hat niemand danach gefragt
not-taken-unreadable = die Kasse kann es nicht lesen (Antwort { $status }: { $said })
not-taken-no-answer = die Kasse hat nicht geantwortet ({ $why })
not-taken-desk-failed = an der Kasse stimmt etwas nicht (Antwort { $status }: { $said })
mistake-to-do = Öffne jede Datei in einem Texteditor, verbessere die Stelle und speichere sie.

kiosk-version = Version { $version }
kiosk-other-version = Version { $version }, die Kasse hat { $own }. Es wird bedient, wie es ist; installiere nach dem Markt auf beiden dieselbe.
kiosk-no-version = Seine Version ist nicht bekannt: eine ältere als { $own }, oder es hat sich noch nicht gemeldet. Es wird bedient, wie es ist.
