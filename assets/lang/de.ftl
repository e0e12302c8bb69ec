# Texte von Tablet und gedruckter Karte auf Deutsch.
back = Zurück
ok = Okay
close = Schließen
languages = Sprache
looks = Schrift und Farben
looks-text = Größe der Schrift
looks-usual = Normal
looks-large = Groß
looks-largest = Sehr groß
looks-contrast = Farben
looks-daylight = Tageslicht
looks-high = Hoher Kontrast
looks-motion = Bewegung
looks-lively = Mit Bewegung
looks-calm = Ohne Bewegung
desk-away = Die Kasse ist nicht erreichbar; du kannst weitermachen.
disk-nearly-full = Tablet fast voll: bitte am Verkaufstisch Bescheid sagen.
let-go = Dieses Tablet kann keine Nummern geben: bitte am Verkaufstisch Bescheid sagen.
practice = Übung: nichts davon zählt
mix-named = { $name }, einer aus { $home }
mix-one = einer aus { $home }
mix-note = In { $homes } liegt eine Mischung: deiner kann anders aussehen.
sold-out = Alle weg
tray = Kasten { $letter }

welcome-unnamed = Mach deinen eigenen Schmuck
welcome-not-paired = Dieses Tablet gehört noch zu keiner Kasse. Für den Verkauf: Halte die linke obere Ecke gedrückt und wähle dann „Mit einer Kasse verbinden“.
welcome-no-catalogue = Der Katalog der Kasse fehlt noch. Für den Verkauf: Läuft die Kasse, und ist sie im selben Netz?
welcome-being-laid = Dieser Tisch wird noch gedeckt. Komm bitte in einer kleinen Weile wieder.
welcome-invitation = Mach deine eigene Kette oder deinen eigenen Armreif. Sieh, wie es aussieht und was es kostet, und ändere, so oft du magst.
welcome-begin = Tippen und anfangen
seat-come = Bitte an den Tisch kommen
seat-from-to = Ein Platz am Tisch: { $from } bis { $to } min
seat-up-to = Ein Platz am Tisch: bis { $to } min
put-back = Wohin gehört das?
put-back-hint = Tippe auf das Bild des Anhängers, den du gefunden hast.
thread = Ich habe eine Nummer
thread-ask = Tippe die Nummer des Tickets
thread-asking = Wird nachgesehen…
thread-no-number = Eine Ziffer ist falsch. Sieh noch einmal auf die Nummer.
thread-unknown = Kein Stück hat diese Nummer.
thread-away = Die Kasse ist gerade nicht erreichbar. Versuch es auf dem Tablet, auf dem das Stück entstand.
thread-collect = Sammle alles und fädle es wie auf dem Bild
thread-collected = { $n } von { $of }
thread-done = Fertig

base-title = Wähle deine Basis
base-onward = Zu den Anhängern
base-shorter = Kürzer
base-longer = Länger
base-unfit = Nicht für dieses Alter
base-closes = schließt bis { $neck } Halsumfang
base-neck = Hals: { $neck }
base-neck-ask = Halsumfang
neck-title = Wie groß ist der Halsumfang?
neck-why = Miss dort, wo die Kette liegen wird. Das Maß dient nur für dieses Stück.
neck-unknown = Nicht gemessen
not-to-be-worn = Nicht zum Tragen
base-left-off-title = Zurück ins Fach
base-left-off = { $n ->
    [one] Ein Anhänger passt nicht auf diese Basis und liegt wieder in seinem Fach.
   *[other] { $n } Anhänger passen nicht auf diese Basis und liegen wieder in ihren Fächern.
  }
falls-throat = eng am Hals
falls-neck = am Halsansatz
falls-collarbone = auf dem Schlüsselbein
falls-below-collarbone = knapp unter dem Schlüsselbein
falls-breastbone = auf dem Brustbein
falls-low = unter dem Brustbein

stage-undo = Rückgängig
stage-redo = Wiederholen
stage-anew = Neu anfangen
stage-surprise = Überrasch mich
stage-no-surprise = Von dem, was noch da ist, passt nichts zu deinen Wünschen. Zeig mehr Anhänger oder erhöhe den Betrag.
stage-to-left = Einen Platz nach links
stage-to-right = Einen Platz nach rechts
stage-take-off = Abnehmen
stage-nearer = Näher ansehen
stage-whole = Das ganze Stück sehen
stage-true-size = In echter Größe sehen
stage-usual-size = Zurück zur üblichen Größe
stage-hint = Tippe einen Anhänger an oder zieh ihn auf die Basis.
stage-review = Ansehen
stage-no-room-title = Kein Platz mehr
stage-no-room = { $n ->
    [one] Auf diese Basis passt nur ein Anhänger. Nimm einen ab oder wähle eine längere.
   *[other] Auf diese Basis passen { $n } Anhänger. Nimm einen ab oder wähle eine längere.
  }
stage-no-room-at-all = { $n ->
    [one] Auf diese Basis passt nur ein Anhänger. Nimm einen ab oder wähle eine andere Basis.
   *[other] Auf diese Basis passen { $n } Anhänger. Nimm einen ab oder wähle eine andere Basis.
  }
trouble-too-short = Diese Länge ist für den Hals zu kurz. Wähle eine längere.
trouble-other = So lässt sich das Stück nicht machen. Wähle eine andere Basis oder nimm einen Anhänger ab.
rows-before = Vorige Reihen
rows-after = Weitere Reihen

why-sold-out-title = Alle weg
why-sold-out = „{ $name }“ ist nicht mehr zu haben: Alle sind weg oder hängen schon an deinem Stück.
why-too-dear-title = Mehr als du hast
why-too-dear = Mit „{ $name }“ würde das Stück mehr kosten, als du hast. Nimm etwas ab oder erhöhe den Betrag.
why-not-for-title = Nichts für dieses Alter
why-no-fit-title = Der Ring ist zu klein
why-no-fit = Der Ring von „{ $name }“ ist { $opens } mm weit; diese Basis braucht { $needs } mm. Vielleicht passt eine andere.

filters = Finden
filters-title = Was möchtest du sehen?
filters-any = Alles
filters-clear = Alles zeigen
filters-show = Fertig
filters-budget = Ich habe
filters-price = Jedes kostet höchstens
filters-up-to = bis { $sum }
filters-have = Ich habe { $sum }
filters-end = Nicht mehr gesucht:
filters-sort = Art
filters-colour = Farbe
filters-finish = Metall

sort-Charm = Motive
sort-Bead = Perlen
sort-Vial = Fläschchen
sort-Locket = Medaillons
sort-Key = Schlüssel
sort-Crystal = Kristalle
sort-Tassel = Quasten
sort-Found = Fundstücke
colour-Golden = golden
colour-Silvery = silbern
colour-Coppery = kupfern
colour-Clear = klar
colour-White = weiß
colour-Black = schwarz
colour-Red = rot
colour-Pink = rosa
colour-Orange = orange
colour-Yellow = gelb
colour-Green = grün
colour-Blue = blau
colour-Violet = violett
colour-Brown = braun
finish-AntiqueBrass = Altmessing
finish-AntiqueSilver = antik silberfarben
finish-Copper = Kupfer
finish-Gold = goldfarben
finish-Silver = silberfarben
finish-Gunmetal = Dunkelgrau
finish-Steel = Stahl

wearer-ask = Für wen ist es?
wearer-ask-short = Für wen?
wearer-why = Manche Stücke sind für kleine Kinder nicht sicher. Mehr fragen wir nicht.
wearer-under3 = Unter 3 Jahren
wearer-from3to5 = 3 bis 5 Jahre
wearer-from6to12 = 6 bis 12 Jahre
wearer-from13 = 13 oder älter
wearer-unknown = Keine Angabe

lines-title = Was es kostet
lines-subtotal = Zwischensumme
lines-discount = Rabatt
lines-tax = Steuer
lines-tax-inside = Enthaltene Steuer
tag-with-tax = mit Steuer
lines-total = Summe

caution-title = Gut zu wissen
caution-count = { $n ->
    [one] { $n } Hinweis
   *[other] { $n } Hinweise
  }
caution-none = Nichts gefunden, worauf zu achten wäre.
caution-deferral = Eine Hilfe, kein Prüfbericht; es entscheiden die örtlichen Regeln und eine fachkundige Sicherheitsbewertung.
caution-small_part = Kleinteile: Ein Kind unter 3 Jahren kann daran ersticken.
caution-small_part-away = Kleinteile: von Kindern unter 3 Jahren fernhalten.
caution-small_ball = Erstickungsgefahr: so groß wie ein kleiner Ball. Ein Kind unter 3 Jahren kann daran ersticken.
caution-magnet = Ein starker Magnet. Verschluckte Magnete können schwer verletzen: von Kindern und von Herzschrittmachern fernhalten.
caution-magnet-unknown = Ein Magnet, und niemand weiß, wie stark er ist. Verschluckte Magnete können schwer verletzen: von Kindern und von Herzschrittmachern fernhalten.
caution-magnet-within = Ein schwacher Magnet. Ein verschluckter Magnet kann verletzen: Behalte ein Kind, das ihn trägt, im Auge, und halte den Magneten von Herzschrittmachern fern.
caution-magnet-together = Mehrere Magnete. Verschluckt können sie sich im Körper anziehen und schwer verletzen: von Kindern und von Herzschrittmachern fernhalten.
caution-coin_cell = Eine Knopfzelle: von Kindern fernhalten. Verschluckt führt sie binnen Stunden zu Verätzungen: sofort ärztliche Hilfe holen.
caution-glass = Glas: Es kann in scharfe Scherben zerbrechen.
caution-sharp = Eine scharfe Kante oder Spitze.
caution-breakaway = Öffnet sich nicht, wenn man daran zieht: einem Kind zum Spielen und Schlafen abnehmen. Unter 3 Jahren nicht empfohlen.
caution-breakaway-apart = Öffnet sich, wenn man fest daran zieht, doch das reicht vielleicht nicht: einem kleinen Kind zum Spielen und Schlafen abnehmen. Unter 3 Jahren nicht empfohlen.
caution-cord_loop = Eine lange Schlaufe kann hängen bleiben: Behalte ein Kind, das sie trägt, im Auge.
caution-unknown_metal = Niemand weiß, welches Metall das ist: Es wurde nicht auf Blei, Cadmium und Nickel geprüft.
caution-unknown_metal-declared = Niemand weiß, welches Metall das ist. Der Lieferant erklärt schriftlich, dass die Grenzwerte für Blei, Cadmium und Nickel eingehalten sind; geprüft wurde es nicht.
caution-lead = Es kann Blei enthalten; geprüft wurde es nicht.
caution-lead-declared = Es kann Blei enthalten; der Lieferant erklärt schriftlich, dass der Grenzwert eingehalten ist. Geprüft wurde es nicht.
caution-lead-found = Eine Prüfung ergab { $number } ppm Blei, mehr als der Grenzwert von { $limit }.
caution-lead-elsewhere = Eine Prüfung ergab { $number } ppm Blei: Der Grenzwert von { $limit }, der hier gilt, ist eingehalten, doch manche Regeln erlauben für Kinder weniger.
caution-lead-children = Eine Prüfung ergab { $number } ppm Blei: mehr als der Grenzwert von { $limit } für Kinder. Für dieses Alter ist uns kein Grenzwert bekannt.
caution-lead-exempt = Eine Prüfung ergab { $number } ppm Blei. Die Regel macht hier eine Ausnahme von ihrem Grenzwert von { $limit }.
caution-cadmium = Es kann Cadmium enthalten; geprüft wurde es nicht.
caution-cadmium-declared = Es kann Cadmium enthalten; der Lieferant erklärt schriftlich, dass der Grenzwert eingehalten ist. Geprüft wurde es nicht.
caution-cadmium-found = Eine Prüfung ergab { $number } ppm Cadmium, mehr als der Grenzwert von { $limit }.
caution-cadmium-elsewhere = Eine Prüfung ergab { $number } ppm Cadmium: Der Grenzwert von { $limit }, der hier gilt, ist eingehalten, doch manche Regeln erlauben für Kinder weniger.
caution-cadmium-children = Eine Prüfung ergab { $number } ppm Cadmium: mehr als der Grenzwert von { $limit } für Kinder. Für dieses Alter ist uns kein Grenzwert bekannt.
caution-nickel = Es kann Nickel abgeben; geprüft wurde es nicht. Bei Nickelallergie nicht tragen.
caution-nickel-declared = Es kann Nickel abgeben; der Lieferant erklärt schriftlich, dass der Grenzwert eingehalten ist. Geprüft wurde es nicht. Bei Nickelallergie nicht tragen.
caution-nickel-found = Eine Prüfung ergab eine Abgabe von { $number } µg/cm² Nickel pro Woche, mehr als der Grenzwert von { $limit }. Bei Nickelallergie nicht tragen.
caution-nickel-elsewhere = Eine Prüfung ergab eine Abgabe von { $number } µg/cm² Nickel pro Woche: Der Grenzwert von { $limit }, der hier gilt, ist eingehalten, doch manche Regeln erlauben für Kinder weniger. Bei Nickelallergie nicht tragen.
caution-nickel-children = Eine Prüfung ergab eine Abgabe von { $number } µg/cm² Nickel pro Woche: mehr als der Grenzwert von { $limit } für Kinder. Für dieses Alter ist uns kein Grenzwert bekannt. Bei Nickelallergie nicht tragen.
caution-paint = Der Lack kann Blei enthalten; geprüft wurde er nicht.
caution-paint-declared = Der Lack kann Blei enthalten; der Lieferant erklärt schriftlich, dass der Grenzwert eingehalten ist. Geprüft wurde er nicht.
caution-paint-found = Eine Prüfung ergab { $number } ppm Blei im Lack, mehr als der Grenzwert von { $limit }.
caution-paint-elsewhere = Eine Prüfung ergab { $number } ppm Blei im Lack: Der Grenzwert von { $limit }, der hier gilt, ist eingehalten, doch manche Regeln erlauben für Kinder weniger.
caution-paint-children = Eine Prüfung ergab { $number } ppm Blei im Lack: mehr als der Grenzwert von { $limit } für Kinder. Für dieses Alter ist uns kein Grenzwert bekannt.
caution-food_allergen = Nur zur Zierde, nicht zum Essen. Die Allergene sind nicht bekannt: bei Lebensmittelallergie nicht tragen.
caution-food_allergen-known = Nur zur Zierde, nicht zum Essen. Enthält: { $allergens }. Bei einer Allergie dagegen nicht tragen.
caution-looks_like_food = Sieht aus wie Essen, ist aber nicht zum Essen: Ein Kind kann es für Essen halten und daran ersticken.
caution-liquid = Enthält eine Flüssigkeit: Es kann zerbrechen oder auslaufen. Nicht trinken.
caution-heavy_on_child = Wiegt mit den Anhängern { $number } g, viel für einen Kinderhals.
caution-chain_too_short = Schließt bis { $number } mm Halsumfang: Miss den Hals.
caution-chain_too_short-own = Schließt bis { $number } mm Halsumfang; angegeben hast du { $limit } mm.
caution-bangle_size = Passt über Hände bis { $number } mm Umfang: Miss die Hand.
caution-bangle_size-slips = Hat innen { $number } mm Umfang und kann von der Hand rutschen.
unsuitable-under3 = Dieses Stück ist nichts für ein Kind unter 3 Jahren.
unsuitable-child = Dieses Stück ist nichts für ein Kind in diesem Alter.
unsuitable-anyone = Ein Teil dieses Stücks sollte so nicht getragen werden. Bitte frag am Verkaufstisch.
unsuitable-forbidden = Ein Teil dieses Stücks darf nicht verkauft werden. Bitte frag am Verkaufstisch.
unsuitable-nothing = Nichts auf diesem Tisch ist geeignet. Bitte frag am Verkaufstisch.
unsuitable-unknown = Ein Teil dieses Stücks ist nicht für jedes Kind. Für wen ist es?
unsuitable-base = Andere Basis oder Länge
unsuitable-change = Für jemand anderen
unsuitable-show = Passende Anhänger zeigen
unsuitable-back = Zurück zu den Anhängern
grown-up = Ich bin erwachsen und habe das gelesen.
grown-up-read = { $n ->
    [one] Lies zuerst den Hinweis
   *[other] Lies zuerst die { $n } Hinweise
  }

allergen-Milk = Milch
allergen-Egg = Ei
allergen-Fish = Fisch
allergen-Crustaceans = Krebstiere
allergen-TreeNuts = Schalenfrüchte (Nüsse)
allergen-Peanuts = Erdnüsse
allergen-Wheat = Weizen
allergen-Soybeans = Soja
allergen-Sesame = Sesam
allergen-Gluten = Gluten
allergen-Celery = Sellerie
allergen-Mustard = Senf
allergen-Sulphites = Sulfite
allergen-Lupin = Lupinen
allergen-Molluscs = Weichtiere
month-1 = Januar
month-2 = Februar
month-3 = März
month-4 = April
month-5 = Mai
month-6 = Juni
month-7 = Juli
month-8 = August
month-9 = September
month-10 = Oktober
month-11 = November
month-12 = Dezember
date-month = { $month } { $year }
date-day = { $n }. { $month } { $year }
dated-not_noted = Datum nicht vermerkt
dated-as_of = Stand: { $day }
dated-of = Datum: { $day }
dated-in_force = in Kraft seit: { $day }
dated-applies = gilt ab: { $day }
dated-made_after = für Ware, hergestellt nach: { $day }
dated-edition = Ausgabe { $edition }
status-read = gelesen
status-second_hand = aus zweiter Hand
status-from_memory = aus dem Gedächtnis
status-practice = allgemein üblich, ohne Quelle

review-title = Dein Stück
review-send = An die Kasse senden
review-sending = Wird gesendet…
send-failed-title = Nicht gesendet
send-not-paired = Dieses Tablet gehört noch zu keiner Kasse. Dein Stück bleibt hier; bitte frag am Verkaufstisch.
send-let-go = Die Kasse kennt dieses Tablet nicht mehr, darum kann es keine Nummer geben. Dein Stück bleibt hier; bitte frag am Verkaufstisch.
send-practice-over = Die Übung ist gerade zu Ende gegangen, darum wurde dein Stück nicht gesendet. Sende es noch einmal: ab jetzt zählt es.
send-no-numbers = Dieses Tablet hat keine Nummer mehr. Dein Stück bleibt hier; bitte frag am Verkaufstisch.
send-disk = Das Tablet kann dein Stück gerade nicht speichern. Es bleibt auf dem Bildschirm; bitte zeig es am Verkaufstisch.
send-refused = Die Kasse konnte das Stück nicht annehmen. Es bleibt auf dem Bildschirm; bitte zeig es am Verkaufstisch.
send-short-title = Jemand war schneller
send-short = { $names }: Das letzte Stück ist gerade weggegangen. Alles andere ist noch da; bitte wähle neu.

sent-title = Deine Nummer
sent-next = Geh zur Kasse. Sobald deine Nummer dran ist, wird dein Stück zusammengesetzt.
sent-thread = Hol deine Anhänger aus ihren Fächern und fädle sie auf. Bring dein Stück dann zur Kasse. Jedes Tablet zeigt dir unter deiner Nummer diese Liste wieder.
sent-kept = Dein Stück ist auf diesem Tablet gespeichert und geht später an die Kasse. Deine Nummer gilt.
sent-short = Einer der Anhänger ist vielleicht schon weg; an der Kasse hilft man dir, einen anderen zu finden.
sent-refused = Die Kasse konnte dein Ticket nicht annehmen. Bitte geh mit deiner Nummer hin; dort kann es noch aufgenommen werden.
sent-homes = Wo deine Anhänger auf dem Tisch liegen
sent-done = Fertig

anew-title = Neu anfangen?
anew-text = Dein Stück wird weggeräumt, und du fängst mit einer leeren Basis an.
anew-keep = Mein Stück behalten
anew-yes = Neu anfangen
idle-title = Noch da?
idle-text = Wenn du nicht antwortest, wird dein Stück weggeräumt.
idle-here = Ich bin da

seller-title = Für den Verkauf
seller-asking = Die Kasse wird gefragt…
seller-language = Sprache für neue Gäste
seller-hand = Kästen
seller-right-handed = Kästen rechts
seller-left-handed = Kästen links
seller-looks = So sieht der Bildschirm für neue Gäste aus
seller-screen = Größe des Bildschirms
seller-measured = Ein Millimeter ist { $px } Pixel breit. Gäste können ihr Stück in echter Größe sehen.
seller-not-measured = Noch nicht gemessen.
seller-card = Mit einer Bankkarte vergleichen
card-ask = Halte eine Bankkarte auf die gezeichnete, linke obere Ecke auf linke obere Ecke. Mach die gezeichnete genauso groß.
card-much-smaller = Viel kleiner
card-smaller = Kleiner
card-larger = Größer
card-much-larger = Viel größer
card-same = Gleich groß
seller-desk = Kasse
seller-paired = Verbunden mit { $desk } als Kiosk { $digit }.
seller-not-paired = Mit keiner Kasse verbunden.
seller-waiting = { $n ->
    [0] Kein Ticket wartet.
    [one] Ein Ticket wartet auf Übergabe.
   *[other] { $n } Tickets warten auf Übergabe.
  }
seller-let-go = Die Kasse kennt dieses Tablet nicht mehr: Es gibt keine Nummern, bis es wieder verbunden ist.
seller-aside = { $n ->
    [one] Ein Ticket hat die Kasse nicht angenommen; ihre Seite „Tablets“ zeigt es.
   *[other] { $n } Tickets hat die Kasse nicht angenommen; ihre Seite „Tablets“ zeigt sie.
  }
seller-open-desk = Kasse hier öffnen
seller-phone = Oder öffne die Kasse auf einem Telefon im selben Netz: Richte die Kamera hierher.
seller-desk-not-opened = Hier ließ sich kein Browser öffnen. Nimm ein Telefon oder einen anderen Computer.
seller-pair = Mit einer Kasse verbinden
seller-leave = Kiosk verlassen
seller-not-kept = Die Einstellungen gelten nur bis zum Ausschalten; das Tablet konnte sie nicht speichern.
pin-ask = PIN des Verkaufs
pin-not-set = Es wurde noch keine PIN gewählt. Wähl eine an der Kasse, oder tippe den Einrichtungscode von ihrem Terminal.
pin-wrong = Das ist nicht die PIN.
pin-wait = Zu viele Versuche. Warte { $seconds } Sekunden.
pin-away = Die Kasse ist nicht erreichbar, und dieses Tablet kennt die PIN noch nicht.
pair-address = Adresse der Kasse
pair-code = Code, den die Kasse zeigt
pair-done = Verbunden. Das ist Kiosk { $digit }.
pair-wrong-code = Das ist nicht der Code, den die Kasse zeigt. Vergleiche ihn mit der Seite „Tablets“.
pair-no-code = Die Kasse zeigt gerade keinen Code: Jeder gilt einmal und zehn Minuten lang. Hol auf der Seite „Tablets“ einen neuen.
pair-no-digit = Die Kasse hat keine Ziffer mehr für ein weiteres Tablet. Schließ den Markt ab, oder verbinde ein freigegebenes Tablet wieder.
pair-desk-failed = Die Kasse konnte die Verbindung nicht festhalten. Sieh an der Kasse nach und versuch es noch einmal.
pair-not-reached = Unter { $desk } antwortet keine Kasse. Vergleiche die Adresse mit der Seite „Tablets“ der Kasse.
pair-not-a-desk = Was unter { $desk } antwortet, ist keine Kasse. Vergleiche die Adresse mit der Seite „Tablets“ der Kasse.
pair-disk = Dieses Tablet konnte die Verbindung nicht speichern. Schaff Platz darauf und versuch es noch einmal.
key-erase = Löschen
key-enter = Fertig

## The card of cautions that is printed at the desk

card-title = { $table }: Wer kann was tragen?
card-about = Hinweise nach diesen Regeln: { $region }. Jedes Teil für sich; was zusammen hängt, kann zu schwer oder zu lang sein; das steht auf dem Ticket.
card-bases = Basen
card-ready = ohne Anhänger, in der Länge, die bereitliegt
card-drop = Anhänger
card-base = Basis
card-care = Mit Vorsicht
card-fine = Nichts gefunden
card-signs = Was die Zeichen bedeuten und woher sie kommen
card-found = { $what } (durch Prüfung festgestellt)
card-declared = { $what } (vom Lieferanten erklärt)
code-small_part = Kleinteil
code-small_ball = groß wie ein kleiner Ball
code-magnet = Magnet
code-coin_cell = Knopfzelle
code-glass = Glas
code-sharp = spitz oder scharf
code-breakaway = um den Hals
code-cord_loop = lange Schlaufe
code-unknown_metal = unbekanntes Metall
code-lead = Blei
code-cadmium = Cadmium
code-nickel = Nickel
code-paint = Lack
code-food_allergen = Essen, Allergene
code-looks_like_food = sieht aus wie Essen
code-liquid = Flüssigkeit
code-heavy_on_child = schwer
code-chain_too_short = Halsumfang
code-bangle_size = Handumfang
