# The desk in German: what the seller reads of cautions.

# The hazards by their names.
hazard-small_part = Kleinteil
hazard-small_ball = kleiner Ball
hazard-magnet = Magnet
hazard-coin_cell = Knopfzelle
hazard-glass = Glas
hazard-sharp = spitz oder scharf
hazard-breakaway = öffnet sich nicht von selbst
hazard-cord_loop = lange Schlaufe
hazard-unknown_metal = unbekanntes Metall
hazard-lead = Blei
hazard-cadmium = Cadmium
hazard-nickel = Nickel
hazard-paint = Lack
hazard-food_allergen = Lebensmittelallergen
hazard-looks_like_food = sieht aus wie Essen
hazard-liquid = Flüssigkeit
hazard-heavy_on_child = schwer für ein Kind
hazard-chain_too_short = Kette zu kurz
hazard-bangle_size = Größe des Armreifs

# What is said to the seller beside a caution; the English stands in the rules and the code as well, and a test holds them together.
seller-for-you = Für dich:
seller-small-both = Ring und Körper passen in den Prüfzylinder.
seller-small-drop = Der Ring { $ring ->
    [fits] passt in den Prüfzylinder
    [measure] ist ein Grenzfall: miss ihn am Prüfzylinder
   *[no] passt nicht in den Prüfzylinder
  }; der Körper { $body ->
    [fits] passt in den Prüfzylinder
    [measure] ist ein Grenzfall: miss ihn am Prüfzylinder
   *[no] passt nicht in den Prüfzylinder
  }.
seller-small-ends = { $size ->
    [fits] Verschluss oder Endringe passen in den Prüfzylinder.
    [measure] Verschluss oder Endringe sind ein Grenzfall: miss sie am Prüfzylinder.
   *[no] Verschluss und Endringe passen nicht in den Prüfzylinder.
  }
seller-small-hoop = { $size ->
    [fits] Der ganze Armreif passt in den Prüfzylinder.
    [measure] Es ist ein Grenzfall: miss ihn am Prüfzylinder.
   *[no] Der Armreif selbst passt nicht in den Prüfzylinder.
  }
seller-small-off = { $size ->
    [fits] Was abgehen kann, passt in den Prüfzylinder.
    [near] Was abgehen kann, ist ein Grenzfall: miss es nach.
    [measure] Was abgehen kann, ist ein Grenzfall: miss es am Prüfzylinder.
   *[no] Was abgehen kann, passt nicht in den Prüfzylinder.
  }
seller-found-forbidden = Eine Prüfung ergab mehr, als die Regel erlaubt ({ $figure }): Es darf nicht verkauft werden.
seller-found-grave = Eine Prüfung ergab mehr, als die Regel erlaubt ({ $figure }): Verkaufe es nicht für diese Person.
seller-found = Eine Prüfung ergab mehr, als für Kinder erlaubt ist ({ $figure }).
seller-ppm = { $number } ppm
seller-nickel-rate = { $number } µg/cm² pro Woche
seller-elsewhere = Eine Prüfung ergab: Der Grenzwert, der hier gilt, ist eingehalten. Sag allen, die es betrifft, was gefunden wurde.
seller-exempt = Die Regel macht unter ihren Bedingungen eine Ausnahme ({ $why }); bewahre den Nachweis auf.
exempt-CrystalGlass = Kristallglas der Klassen 1 bis 4
exempt-Enamel = Email
exempt-NaturalStone = Naturstein
exempt-Before1961 = ein Stück von vor 1961
seller-declared = Der Lieferant erklärt es schriftlich ({ $paper }, { $day }); das ist kein Prüfbericht. Bewahre das Papier auf.

# As the rules have it, where nothing was tested and nobody stated anything.
seller-usual-small_part = Nicht für ein Kind unter 3 Jahren. Bei 3 bis 5 Jahren sag, dass es verschluckt werden kann; allen anderen sag: von Kindern unter 3 Jahren fernhalten.
seller-usual-small_ball = Es passt nicht in den Prüfzylinder, ist aber so groß wie ein kleiner Ball. Bälle an einer Schnur oder Schlaufe zählen mit: nicht für ein Kind unter 3 Jahren.
seller-usual-magnet = Ab 50, oder wenn niemand es weiß, darf er nicht verkauft werden, wo er lose ist oder sich lösen kann. Miss ihn, oder nimm ihn vom Tisch.
seller-within-magnet = Er liegt unter dem Grenzwert der Regel, doch kein Magnet gehört zu einem kleinen Kind, und zwei können sich im Körper anziehen. Sag allen, was verschluckte Magnete anrichten und dass man sie von Herzschrittmachern fernhält.
seller-usual-coin_cell = Prüfe den Deckel, bevor du es übergibst. Sag, dass eine verschluckte Zelle ein Notfall ist: sofort ärztliche Hilfe holen.
seller-usual-glass = Sag, dass es Glas ist und zerbrechen kann. Nicht für ein Kind unter 3 Jahren.
seller-usual-sharp = Zeig die Spitze oder Kante. Die Regel endet bei 8 Jahren, mitten in 6 bis 12: nicht für ein Kind bis 12 Jahre.
seller-usual-breakaway = Diese Kette hält, wenn man daran zieht. Sag, dass ein Kind sie zum Spielen und Schlafen abnimmt.
seller-within-breakaway = Die Kette öffnet sich, wenn man fest daran zieht. Die Atemwege eines kleinen Kindes schließen sich bei viel weniger: Sag, dass man die Kette zum Spielen und Schlafen abnimmt. Ketten werden unter 3 Jahren nicht empfohlen.
seller-usual-cord_loop = Der Wert gilt für Kinder unter 3 Jahren; längere Schlaufen bleiben in jedem Alter leichter hängen. Kürzer kostet genauso viel.
seller-usual-unknown_metal = Sag, dass niemand dieses Metall geprüft hat. Verkaufe es nicht für ein Kind bis 12 Jahre: Kinder stecken Dinge in den Mund.
seller-usual-lead = Messing, Guss, Plattiertes und Kristall enthalten oft Blei; verkaufe es ohne Prüfung nicht für ein Kind bis 12 Jahre.
seller-proof-lead = Messing, Guss, Plattiertes und Kristall enthalten oft Blei; verkaufe es ohne Prüfung oder Nachweis einer Ausnahme nicht für ein Kind bis 12 Jahre.
seller-usual-cadmium = Cadmium ist in billigem Guss üblich; verkaufe es ohne Prüfung nicht für ein Kind bis 12 Jahre.
seller-usual-nickel = Frag nach einer Nickelallergie. Ohne Prüfung kann niemand sagen, wie viel Nickel es abgibt.
seller-usual-paint = Verkaufe es ohne Prüfung des Lacks nicht für ein Kind bis 12 Jahre.
seller-usual-food_allergen = Sag, dass es kein Essen mehr ist und welche Allergene es enthält.
seller-usual-looks_like_food = Sag, dass es nicht zum Essen ist. Nicht für ein Kind bis 5 Jahre.
seller-usual-liquid = Sag, was darin ist und dass man es nicht trinkt. Nicht für ein Kind unter 3 Jahren.
seller-usual-heavy_on_child = Biete an, einen Anhänger abzunehmen.
seller-usual-chain_too_short = Miss den Hals. Eine längere Kette kostet genauso viel.
seller-usual-bangle_size = Lass ihn anprobieren, oder miss die Hand um die Knöchel.
