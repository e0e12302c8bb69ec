# The desk in German: signing in, helpers, tablets, trays.

# Choosing a PIN and signing in.
setup-title = PIN wählen
setup-heading = Wähle die PIN der Verkäuferin
setup-about = 6 bis 12 Ziffern ohne Muster. Damit öffnen sich diese Kasse und die Einstellungen jedes Tablets.
setup-code = Einrichtungscode, wie ihn das Terminal der Kasse zeigt
pin-field = PIN
pin-again = Die PIN noch einmal
pin-shape = 6 bis 12 Ziffern
setup-keep = Diese PIN behalten
setup-not-the-code = Das ist nicht der Code, den das Terminal der Kasse zeigt.
pin-not-same = Die beiden sind nicht gleich. Tippe die PIN zweimal.
pin-not-right = Das ist nicht die PIN.
pin-too-many = { $n ->
    [one] Zu viele Versuche. Warte 1 Sekunde, oder melde dich an dem Computer an, auf dem die Kasse läuft.
   *[other] Zu viele Versuche. Warte { $n } Sekunden, oder melde dich an dem Computer an, auf dem die Kasse läuft.
  }
pin-not-a-pin = Eine PIN hat 6 bis 12 Ziffern und sonst nichts.
pin-too-easy = Diese PIN würde jeder als eine der ersten versuchen. Wähle Ziffern ohne Muster.
sign-in = Anmelden
sign-in-lost = Du wurdest abgemeldet, bevor das eingetragen war. Melde dich an und mach es noch einmal.
sign-in-sellers-desk = Die Kasse der Verkäuferin
sign-in-desk = Die Kasse
sign-in-name = Dein Name
sign-in-name-hint = – die Verkäuferin lässt das leer
sign-in-who = Wer bist du?
sign-in-no-match = Dieser Name und diese PIN gehören nicht zusammen.

# Who did something.
seller-by-name = Verkäuferin
approved-by-the-seller = { $name }, mit Zustimmung der Verkäuferin

# Another PIN.
change-pin = Die PIN ändern
change-pin-of = Die PIN von { $name } ändern
change-own-pin = Deine PIN ändern
change-pin-about = Jedes andere Telefon und jeder andere Laptop, auf dem du angemeldet bist, wird abgemeldet.
change-pin-tablets = Ein Tablet, das nicht erreichbar ist, nimmt die alte PIN, bis die Kasse ihm die neue gesagt hat.
pin-now = Die jetzige PIN
pin-new = Die neue PIN, 6 bis 12 Ziffern ohne Muster
pin-new-again = Die neue PIN noch einmal
change-it = Ändern
new-pin-not-same = Die beiden sind nicht gleich. Tippe die neue PIN zweimal.

# Helpers.
staff-title = Mitarbeit
staff-who = Wer hier mitarbeitet
staff-you = – das bist du. Du darfst alles.
staff-about = Wer mithilft, prüft Stücke, kassiert und zählt. Geld zurückzugeben, viel nachzulassen, einen Markt abzuschließen und ein Tablet zu verbinden oder freizugeben braucht deine PIN; die kannst du dafür einmal auf dem Telefon der Hilfe eintippen. Diese Seite und das Abmelden anderer sind allein deine Sache.
staff-add = Eine Hilfe hinzufügen
staff-name = Name, wie er in den Einträgen stehen wird
staff-add-yes = Hinzufügen und eine PIN machen
staff-since = – hilft seit { $time }
staff-new-pin = Neue PIN
staff-remove = Entfernen
staff-act = { $act } – { $name }
staff-pin-title = Die PIN einer Hilfe
staff-pin-of = Die PIN von { $name }
staff-pin-told = Sag sie { $name } jetzt, denn gezeigt wird sie nur dieses eine Mal. { $name } öffnet auf dem Telefon diese Kasse, tippt den Namen und diese PIN ein und kann auf der Seite „Tablets“ eine andere PIN wählen.
done = Fertig
staff-ask-pin = Eine neue PIN für { $name }?
staff-ask-pin-text = Die bisherige öffnet nichts mehr, und die angemeldeten Telefone werden abgemeldet.
staff-ask-pin-yes = Eine neue PIN machen
staff-ask-remove = { $name } entfernen?
staff-ask-remove-text = Alle Telefone werden abgemeldet, und neu anmelden geht nicht mehr. Was eingetragen wurde, behält den Namen.

# Who is signed in.
devices = Angemeldete Geräte
devices-own = Wo du angemeldet bist
device-of = { $name }:
device-at = bei { $address }, seit { $time }
device-this = , dieses hier
browser-on = { $program } auf { $system }
browser-unnamed = Ein Browser
sign-out-everywhere = Überall abmelden
sign-everybody-out = Alle abmelden

# The tablets, and a phone as another till.
phone-till = Ein Telefon als weitere Kasse
phone-till-scan = Richte die Kamera eines Telefons im selben Netz hierauf und melde dich dort an.
phone-till-others = Falls dort nichts kommt: weitere Adressen
phone-till-alone = Diese Kasse ist in keinem Netz, darum erreicht sie kein Telefon: { $address } geht nur auf diesem Computer.
qr-of = QR-Code für { $address }
pair-kiosk = Ein Tablet verbinden
pair-type-code = { $n ->
    [one] Tippe das auf dem Tablet ein, innerhalb 1 Minute:
   *[other] Tippe das auf dem Tablet ein, innerhalb von { $n } Minuten:
  }
pair-desks-address = Die Adresse der Kasse:
pair-here-alone = { $address } (nur auf diesem Computer: er ist in keinem Netz)
pair-another-code = Ein anderer Code
pair-about = Jeder Code verbindet ein Tablet und gilt zehn Minuten lang.
pair-new-code = Neuer Code zum Verbinden
kiosks-paired = Verbundene Tablets
kiosks-tally = Verbunden
kiosks-none = Noch ist kein Tablet verbunden.
kiosk-since = Verbunden { $time }
kiosk-in-reach = erreichbar
kiosk-silent = { $n ->
    [one] still seit 1 Minute
   *[other] still seit { $n } Minuten
  }
kiosk-not-heard = nicht gehört, seit die Kasse läuft
kiosk-release = Freigeben
kiosk-waiting = { $n ->
    [one] 1 Ticket unterwegs
   *[other] { $n } Tickets unterwegs
  }
kiosk-not-taken = { $n ->
    [one] 1 Ticket wurde nicht angenommen
   *[other] { $n } Tickets wurden nicht angenommen
  }
kiosk-guest-waits = Vielleicht wartet der Gast mit der Nummer.
kiosk-unreadable = { $n ->
    [one] 1 Datei auf diesem Tablet sollte ein Ticket sein und ist nicht lesbar; aufgehoben wird sie im Ordner „refused“.
   *[other] { $n } Dateien auf diesem Tablet sollten Tickets sein und sind nicht lesbar; aufgehoben werden sie im Ordner „refused“.
  }
kiosk-renumbered-of = Vom Gast mit { $before }:
kiosk-renumbered = { $before } kam als { $number } an
kiosk-comes-in = Es kommt herein, sobald das Tablet antwortet.
kiosk-goes-away = Es wird weggelegt, sobald das Tablet antwortet.
kiosk-take-in = Annehmen
kiosk-put-away = Weglegen
put-away-title = Ein Ticket weglegen?
put-away-ask = Ticket { $number } weglegen?
put-away-text = Es wird nicht mehr gemeldet und kann nicht mehr angenommen werden. Seine Datei bleibt auf dem Tablet, im Ordner „put-away“.
release-title = Ein Tablet freigeben?
release-ask = Tablet { $digit } freigeben?
release-text = Es kann keine Tickets mehr senden, auch nicht die, die es noch hat, bis es wieder verbunden ist; dann hat es seine Ziffer wieder, und sie kommen an. Ein anderes Tablet bekommt die Ziffer erst, wenn der Markt abgeschlossen ist.
release-keeps = { $n ->
    [one] Es hat noch 1 Ticket: { $numbers }.
   *[other] Es hat noch { $n } Tickets: { $numbers }.
  }
release-yes = Freigeben

# The trays and their counts.
trays-card = Wer kann was tragen: die Karte mit den Hinweisen, zum Drucken
trays-bases = Basen
mistakes-title = Fehler im Katalog
mistakes-about = Der letzte gute Katalog bleibt in Gebrauch, bis sie behoben sind; diese Seite zieht von selbst nach.
mistake-at = , Zeile { $line }, Spalte { $column }
remarks = Bemerkungen
remarks-title = Sieh dir das an
cell-change = { $name }, { $free }: Anzahl ändern
cell-held = { $n } reserviert
part-free = Frei
part-held = Für Tickets reserviert
part-on-hand = Vorhanden
part-how-many = Wie viele liegen frei zum Nehmen im Fach?
part-one-less = einer weniger
part-one-more = einer mehr
part-keep = Diese Anzahl behalten
part-sold-out = Als ausverkauft markieren
to-trays = Zu den Kästen
part-no-count = „{ $typed }“ ist keine Anzahl; tippe eine Zahl von 0 bis { $most }.
cautions-title = Hinweise
card-print = Diese Karte drucken
region-US = Vereinigte Staaten
region-EU = Europäische Union
region-UK = Vereinigtes Königreich

# An address that leads nowhere.
nowhere = Diese Seite gibt es nicht
nowhere-text = An dieser Kasse gibt es keine Seite { $path }. Vielleicht ist die Adresse vertippt, oder was dort stand, ist weg.
refused-nowhere = unter { $path } gibt es nichts für Tablets

# Why something is refused.
refused-sellers = das ist Sache der Verkäuferin; angemeldet bist du als { $name }
refused-sellers-pin = die PIN der Verkäuferin ändert, wer sie kennt
refused-no-device = dieses Gerät ist nicht mehr angemeldet
refused-no-such-ticket = auf Tablet { $digit } liegt dieses Ticket nicht mehr; sieh die Seite „Tablets“ noch einmal an
refused-no-part = nichts im Katalog heißt „{ $name }“
refused-no-picture = kein Bild heißt „{ $name }“
refused-pin-not-checked = die PIN konnte nicht geprüft werden
refused-system = dieser Computer kann das gerade nicht ({ $why }); mach es noch einmal
refused-closing = die Kasse wird gerade beendet
refused-panic = an der Kasse ist etwas schiefgegangen; was vorher eingetragen war, ist sicher
refused-too-much = das ist mehr, als die Kasse auf einmal nimmt
refused-broke-off = was gesendet wurde, brach ab
refused-too-slow = was gesendet wurde, kam nicht rechtzeitig an; sende es noch einmal
refused-not-read = was gesendet wurde, ergibt hier keinen Sinn
refused-not-read-because = was gesendet wurde, ist nicht lesbar: { $why }
refused-nobody = niemand weiß, wer fragt
refused-other-name = öffne die Kasse über ihre Nummer, wie in { $address }
refused-other-site = diese Änderung kam von einer anderen Website; geändert wurde nichts
refused-practice-not-begun = die Übung kann nicht beginnen, und alles ist, wie es war: { $why }
refused-practice-busy = die Übung kann nicht beginnen, und alles ist, wie es war: Das Kassenbuch war die ganze Zeit beschäftigt; versuch es noch einmal
refused-lost-in-practice = das ginge verloren, wenn die Übung endet: PINs und Tablets bleiben, wie sie sind, während jemand übt. Beende zuerst die Übung, auf der Seite „Markt“
refused-practice-began = seit diese Seite gezeigt wurde, hat eine Übung begonnen, darum geschah nichts; sieh die Seite noch einmal an
refused-practice-ended = seit diese Seite gezeigt wurde, ist die Übung zu Ende, darum geschah nichts; sieh die Seite noch einmal an
refused-tablet-unknown = die Kasse kennt dieses Tablet nicht; verbinde es neu
refused-tablets-not-looked-up = die Kasse kann ihre Tablets gerade nicht nachsehen
refused-own-key = der eigene Schlüssel des Tablets muss aus 64 hexadezimalen Ziffern bestehen
refused-practice-old-tablet = die Kasse übt gerade; dieses Tablet hat eine ältere Version, die nicht üben kann
refused-practice-waits = die Kasse übt gerade; was zählt, wartet auf seinem Tablet, bis die Übung endet
