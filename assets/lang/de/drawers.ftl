# The desk in German: drawers, spools, and what is cut at the table.

drawers-title = Schubladen und Spulen
drawers-about = Was da liegt, wie gezählt, ohne das, was seither eine Liste geschnitten oder ein Verkauf in anderer Länge genommen hat. Was für die Kästen gemacht wird, zählt hier erst, wenn du zählst.
drawers-pieces = { $n ->
    [one] 1 Stück
   *[other] { $n } Stück
  }
drawers-no-spools = keine Spule ist übrig
drawers-spools = { $each }; zusammen { $all }
part-new = Ein Teil aufschreiben
part-name = Wie das Teil heißt
part-measure = Wie es gezählt wird
part-by-piece = nach Stück, in einer Schublade
part-by-length = nach Länge, auf Spulen
part-there-now = Was jetzt da liegt: Stück, oder jede Spule wie 10m; 735cm
part-offer-amount = Was ein Lieferant auf einmal verkauft: Stück, oder die Länge
part-offer-price = Was das kostet, in { $currency }
part-kerf = Was jeder Schnitt nimmt, wie 4mm, wenn es nach Länge geht
part-keep-from = Ab welcher Länge du einen Rest behältst, wie 35cm
part-add = Dazulegen, was kam
part-add-pieces = Wie viele Stück kamen
part-add-spools = Was kam, jede Spule wie 10m; 10m
part-add-do = Dazulegen
part-count = Neu zählen
part-count-pieces = Wie viele Stück in der Schublade liegen
part-count-spools = Was da liegt, jede Spule und jeder Rest wie 10m; 735cm
part-strike = Dieses Teil streichen
part-less-than-file = In parts.ron steht eine andere Zahl; Listen und Verkäufe haben seither davon genommen.
part-did-new = Teil { $part } aufgeschrieben
part-did-count = { $part } gezählt
part-did-add = { $part } dazugelegt
part-did-strike = Teil { $part } gestrichen
part-no-name = Schreib, wie das Teil heißt, mit höchstens { $most } Buchstaben.
part-no-keep-from = Sag, ab welcher Länge du einen Rest behältst, wie 35cm.
part-there = ein Teil „{ $part }“ gibt es schon
part-none = ein Teil „{ $part }“ gibt es nicht
part-used = „{ $part }“ steht in Rezepten ({ $recipes }) und Posten ({ $lots }); solange bleibt es
part-used-since = von dem, was damit von „{ $part }“ kam, ist seither etwas geschnitten oder verkauft; nichts wurde rückgängig gemacht. Zähl stattdessen, was da liegt
table-cuts-title = Am Tisch geschnitten
table-cuts-about = Eine Kette in anderer Länge, als bereitliegt, kommt beim Bezahlen von ihrer Spule, Verschluss und Ringe nach dem Rezept aus ihren Schubladen. Das kürzeste Stück, das reicht, gilt als geschnitten; hast du ein anderes genommen, zähl neu. Ein Stück, das zurückkommt, bringt davon nichts zurück.
table-cuts-off = { $part }: { $cut } von { $from };
table-cuts-missing = Nach der Zählung war von „{ $part }“ nicht genug da; nichts wurde abgezogen. Zähl, was da liegt.
table-cuts-on-ticket = Am Tisch auf Länge geschnitten: Beim Bezahlen kommt es von der Spule, und von den Ketten, die bereitliegen, fehlt keine. Ist es geschnitten und wird dann doch nichts daraus, zähl die Spule.
table-cuts-taken-back = Die Kette war auf Länge geschnitten: Nichts davon kommt zurück auf die Spule oder zu den Ketten, die bereitliegen.
history-workbook = Länge von der Spule genommen
begin-parts = Sagen, woraus die Sachen sind
begin-hour = Was eine Stunde deiner Arbeit zählt, in { $currency }
begin-step = In welchen Schritten Preise auf einem kleinen Schild gut lesbar sind, in { $currency }
begin-parts-do = Anfangen
begin-parts-about = Damit beginnt parts.ron im Ordner des Katalogs. Teile werden hier aufgeschrieben; welche ein Anhänger oder eine Basis braucht, steht dort unter recipes. Was nicht gefragt wird, ist dort geschätzt und sagt es.
begin-did = parts.ron begonnen
begin-nothing = Nichts ist kein Betrag; schreib, was es zählt.
