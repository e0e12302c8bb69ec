# Die Kasse auf Deutsch: Papier für den Tisch, und wohin ein verirrtes Teil gehört.

# Auf dem Papier.
labels-title = Papier für { $table }
labels-marks = Preisschilder
labels-tags = Anhänger für Ketten und Armreife
labels-set-up = Aufbauen
labels-prices = Preise
labels-bases = Ketten und Armreife
labels-lengths = { $from_cm } bis { $to_cm } cm · { $from_in } bis { $to_in } in
labels-tax-added = Zuzüglich { $percent } % Steuer
labels-tax-included = Darin { $percent } % Steuer
labels-foot = { $title }, Blatt { $n } von { $all }. An den Linien schneiden; an den Strichen falten oder auch dort schneiden.
labels-ruler = { $mm } mm, wenn in wahrer Größe gedruckt.
labels-map-hint = wie er vor den Gästen liegt
labels-lay = { $n } × { $name } · { $price }
labels-first-desk = Die Kasse läuft, und jemand ist angemeldet
labels-first-tablets = Die Tablets sind geladen und zeigen diesen Tisch
labels-first-float = Das Wechselgeld ist gezählt
labels-first-cautions = Die Karte mit den Hinweisen liegt neben den Kästen
labels-first-put-back = Der Code für verirrte Teile ist für alle Helfenden in Reichweite
labels-code-hint = Für alle, die helfen: Halte die Kamera des Telefons hierauf und tippe dann auf das Bild des Teils, das du gefunden hast.

# Auf den Seiten der Kasse.
labels-page = Papier für den Tisch
labels-page-hint = Preisschilder für beide Ränder jedes Fachs, Anhänger, Pläne, Listen: als PDF zum Drucken und Schneiden.
labels-what = Was
labels-all = Alles
labels-maps = Pläne der Kästen
labels-code = Code für verirrte Teile
labels-sheet = Blätter
labels-columns = Schilder nebeneinander
labels-rows = Schilder untereinander
labels-margin-above = Rand oben und unten, in mm
labels-margin-beside = Rand links und rechts, in mm
labels-grid-hint = So ist ein Schild { $width } × { $height } mm groß, etwa wie der Rand eines Fachs. Bei einer geraden Zahl untereinander liegen die zwei eines Fachs Kopf an Kopf: Falte sie über einen Rand oder schneide sie auseinander.
labels-tray = Welcher Kasten
labels-every-tray = Alle Kästen
labels-language = Sprache
labels-how-much = Wie viel davon
labels-changed-only = Nur was seit dem letzten Druck neu ist
labels-changed = { $n ->
    [0] Alle Schilder sind, wie sie zuletzt gedruckt wurden.
    [one] 1 Schild ist seit dem letzten Druck neu: { $homes }
   *[other] { $n } Schilder sind seit dem letzten Druck neu: { $homes }
}
labels-never = Es wurden noch keine Schilder gedruckt.
labels-make = PDF erstellen
labels-done = Das ist gedruckt
labels-done-hint = Drucke in wahrer Größe (100 %), nicht an die Seite angepasst. Sag Bescheid, wenn die Schilder geschnitten sind: Dann kommen beim nächsten Mal nur die, auf denen etwas anderes steht.
labels-noted = Notiert. Neu ist nur, was sich von jetzt an ändert.
labels-stale = Der Tisch hat sich geändert, seit diese Seite entstand. Erstelle das PDF noch einmal, bevor du sagst, dass es gedruckt ist.
labels-nothing = davon liegt nichts auf dem Tisch, oder nichts davon ist neu
labels-grid-shape = ein Raster hat Spalten und Zeilen, wie 4 und 14
labels-grid-margin = ein Rand ist eine Zahl von Millimetern von 0 bis 60
labels-grid-count = möglich sind 1 bis 10 Schilder nebeneinander und 1 bis 28 untereinander
labels-grid-small = Schilder von { $width } × { $height } mm sind zu klein zum Lesen; nimm weniger, damit sie mindestens 20 × 10 mm haben
labels-not-noted = was gedruckt wurde, konnte nicht notiert werden: { $why }
put-back-none = Auf dem Tisch liegt noch nichts.
put-back-at = { $name } gehört in { $home }.
