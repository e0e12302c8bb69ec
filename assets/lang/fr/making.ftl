# The desk in French: what is made, bought, packed and planned, and the year.

act-bench = Le travail à l’établi
bench-no-form = Ce formulaire est incomplet. Ouvre la page de nouveau ; rien n’a été noté.
bench-off-list = Retirer
cuts-keep = Garder comme liste à cocher
cuts-kept = Listes en cours
cuts-done = { $n } sur { $all } coupées
cuts-changed = Les bobines ont changé depuis ce plan ; prévois de nouveau les coupes. Rien n’a été gardé.
cuts-follow = Coche chaque bobine quand elle est coupée. Le prochain plan commence avec ce qui reste dessus.
cuts-tick = Coupé, ligne { $n }
cuts-away = Ranger cette liste

parts-title = Pièces détachées et achats
parts-about = { $n ->
    [0] Rien n’est à faire, donc aucune pièce détachée n’est nécessaire.
    [one] Ce qu’un bijou à faire prend dans les tiroirs.
   *[other] Ce que { $n } bijoux à faire prennent dans les tiroirs.
  }
parts-buy = À acheter
parts-enough = Les tiroirs ont assez de tout.
parts-short = Manque
parts-price = Prix
parts-lots = { $n ->
    [one] 1 lot, { $amount } en tout.
   *[other] { $n } lots, { $amount } en tout.
  }
parts-no-offer = Aucun lot n’est proposé dans parts.ron.
parts-stops = Sans cela s’arrêtent : { $what }.
parts-in-all = En tout
parts-drawers = Ce que la série demande
parts-needed = Demande
parts-without = Pas compris, car parts.ron n’a pas de recette : { $what }.

made-title = Fait et contrôlé
made-about = Note ce que tu as fait, avec quels lots, et ce que tu as contrôlé. La caisse saura ainsi plus tard quels bijoux vendus peuvent contenir un mauvais lot.
made-what = Ce qui a été fait
made-put-in = Mettre dans leur case : le compte augmente d’autant
made-checks = Contrôlé sur chaque bijou
made-check-loops_closed = Boucles et anneaux sont fermés
made-check-wire_trimmed = Les bouts de fil sont coupés et rentrés
made-check-corks_glued = Les bouchons sont collés, ou il n’y en a pas
made-check-end_rings = Les anneaux de bout tiennent
made-check-pull = Tiré à la main, rien ne s’est détaché
made-lots = Quels lots y sont entrés
made-lots-hint = Une pièce détachée dont tu omets les lots compte comme venant de n’importe lequel.
made-note = Note
made-keep = Noter
made-before = Ce qui a été fait avant
made-of-lots = Lots : { $lots }.
made-all-checked = Tout a été contrôlé.
made-not-checked = Pas contrôlé : { $what }.

lots-title = Lots et rappel
lots-find = Quels bijoux ont le lot
lots-look = Chercher
lots-none = Aucun lot ne s’appelle « { $found } » dans parts.ron ; écris-le comme dans la liste ci-dessous
lots-where = Où le lot { $lot } peut être
lots-used-nowhere = Aucune recette ne prend une pièce de ce lot.
lots-used-in = Ses pièces entrent dans : { $what }.
lots-take-out = Peut encore être sur la table ; retire ceux-ci et regarde-les :
lots-sold = { $n ->
    [0] Aucun bijou vendu ne peut l’avoir.
    [one] 1 bijou vendu peut l’avoir.
   *[other] { $n } bijoux vendus peuvent l’avoir.
  }
lots-shown = Bijoux vendus { $from } à { $to } sur { $all }, les plus anciens d’abord.
lots-by-show = Par vente : { $what }.
lots-by-state = Où ils sont : { $what }.
lots-earlier = Plus anciens
lots-later = Plus récents
lots-all-file = Tous en tableau
lots-worst = Les pièces d’une même case ne se distinguent pas : chacune est nommée jusqu’à ce que toutes soient parties. Ce qui n’est pas noté compte comme le pire.
lots-bought = Ce qui a été acheté
lots-broken = { $all }, dont cassé : { $broken }
lots-paper = Document : { $paper }.
lots-no-paper = Aucun rapport d’essai ni déclaration n’est noté.
lots-about = Les lots sont dans parts.ron. Garde le rapport ou la déclaration du fournisseur là où la liste le dit.
lots-children = Bijoux pour enfants : ce qu’il faut demander
lots-children-about = Les règles diffèrent selon les pays et changent. Cette liste dit ce qu’il faut demander, et non ce qui vaut pour toi.
lots-children-age = Pour quel âge est-ce prévu, et pour quel âge d’autres le prendraient-ils ?
lots-children-test = Quels essais faut-il pour cet âge (petites pièces, métaux, traction), et quel laboratoire peut les faire ?
lots-children-certificate = Qui doit écrire quel certificat ou quelle déclaration, et combien de temps faut-il le garder ?
lots-children-label = Quel marquage va sur le bijou ou sa carte (fabricant, lieu, jour ou lot) ?
lots-children-small-parts = Quels mots sur les petites pièces vont sur la carte et à côté de la table ?
lots-children-records = Quels lots, contrôles et ventes faut-il pouvoir retrouver, et pendant combien d’années ?
lots-children-who = Demande à l’autorité de sécurité des produits là où tu vends, ou à un laboratoire accrédité. Tant qu’ils ne l’ont pas dit, ne vends rien comme fait pour des enfants.

packing-title = Bagages
packing-about = { $n ->
    [0] Tout ce qui est sur la liste est emballé.
    [one] 1 chose reste à emballer.
   *[other] { $n } choses restent à emballer.
  }
packing-again = Prochaine vente : tout déballer
packing-what = Quoi d’autre
packing-spare = C’est une réserve
packing-add = Ajouter
packing-usual = Ajouter ce qu’il faut d’habitude
packing-pack = Emballé : { $what }
packing-is-spare = réserve
packing-forgotten = { $n ->
    [one] oublié une fois
   *[other] oublié { $n } fois
  }
packing-forgot = Oublié
packing-nothing = écris ce qu’il faut emballer
packing-usual-chain = Chaîne en bobine, pour les longueurs coupées à la table
packing-usual-tools = Pinces, coupe-fil, jauge et règle
packing-usual-clasps = Fermoirs et anneaux de réserve
packing-usual-drops = Breloques de réserve dans leurs boîtes
packing-usual-bases = Chaînes et joncs de réserve
packing-usual-float = Fonds de caisse en billets et pièces
packing-usual-tablets = Tablettes et ordinateur
packing-usual-chargers = Chargeurs, batterie, rallonge
packing-usual-reader = Lecteur de cartes, chargé
packing-usual-lights = Lampes et miroir
packing-usual-paper = Papier d’imprimante, sachets, cartes
packing-usual-cautions = Mises en garde imprimées et permis

plans-title = Ventes à venir et commandes
plans-shows = Ventes à venir
plans-no-shows = Aucune vente n’est prévue.
plans-day = Jour
plans-place = Lieu
plans-fee = Prix du stand
plans-deadline = Date limite
plans-permit = Numéro du permis
plans-note = Note
plans-add-show = Ajouter la vente
plans-passed = passée
plans-is-fee = Prix du stand : { $fee }.
plans-is-deadline = Date limite : { $day }.
plans-is-permit = Permis : { $permit }.
plans-no-place = écris où a lieu la vente
plans-no-fee = « { $found } » n’est pas un prix de stand ; écris un montant à partir de 0, comme 45,00
plans-orders = Commandes
plans-no-orders = Rien n’est commandé.
plans-due = Voulu pour le
plans-agreed = Ce qui est convenu
plans-number = Numéro
plans-number-hint = Un numéro auquel tu reconnais qui a commandé, et rien d’autre : ni nom ni adresse.
plans-add-order = Ajouter la commande
plans-done = fait
plans-late = en retard
plans-is-done = Fait
plans-nothing-agreed = écris ce qui est convenu
plans-no-number = « { $found } » n’est pas un numéro ; écris seulement des chiffres, 15 au plus, et pas de nom

year-title = L’année
year-which = Année
year-stock-on = Stock à la fin du
year-show = Montrer
year-no-year = « { $found } » n’est pas une année ; écris quatre chiffres, comme 2026
year-no-day = « { $found } » n’est pas un jour ; écris année, mois et jour, comme 2026-12-31
year-nothing = Rien n’a été vendu en { $year }.
year-about = Selon le calendrier de cet ordinateur. Ce qui a été repris ou corrigé compte dans le trimestre où cela s’est fait. Les ventes d’entraînement n’y sont pas. Ce qui est imposable, et où, c’est à ton conseil fiscal de le dire.
year-by-closing = De certaines ventes, une version plus ancienne n’a gardé que les sommes : elles comptent le jour où la vente a été close.
year-set-apart = Pas dans ces sommes, car cela ne pouvait pas être ajouté (vente, numéro, montant) : { $what }
year-tax = Taxe par trimestre, lieu et taux
year-quarter = Trimestre
year-q = T{ $n }
year-net = Vendu, hors taxe
year-the-tax = Taxe
year-no-place = lieu non précisé
year-rate = { $percent } %
year-rate-unknown = taux non gardé
year-payments = Encaissé, par moyen de paiement
year-taken = Encaissé moins remboursé
year-reductions = Remises et corrections
year-amount = Montant
year-off-reductions = Remises en tout
year-off-by_hand = Dont à la main
year-off-taken_back = Repris, taxe comprise
year-off-tax_taken_back = Taxe dans ce qui a été repris
year-off-paid_out = Remboursé
year-off-cash_rounding = Arrondi des espèces
year-off-deposits = Payé pour ce qui n’est pas encore vendu
year-stock = Stock au coût
year-stock-unknown = Ce qu’il y avait à la fin du { $day } n’est pas connu : ce registre ne gardait pas encore les comptes.
year-stock-worth = À la fin du { $day }, les pièces détachées de tous les bijoux finis avaient coûté { $worth }.
year-stock-no-cost = Sans { $n } bijoux dont le coût n’est pas connu.
year-stock-about = D’après tous les lots achetés jusqu’ici. Tes heures, et les pièces encore dans les tiroirs, n’y sont pas.
year-stock-since = Les comptes sont connus depuis le { $day }.

act-restore = Mettre une copie à la place du registre
restore-this = Mettre cette copie à la place du registre
restore-about = Au prochain démarrage de la caisse, tout sera comme dans cette copie : tickets, sommes, comptes, codes et tablettes appairées. Ce qui a été noté depuis est gardé dans un dossier à côté, mais n’est plus sur aucune page ni dans aucune somme.
restore-do = Au prochain démarrage
restore-waits = Au prochain démarrage de la caisse, { $name } prend la place du registre. Ce qui est noté d’ici là n’y sera pas.
restore-not = Finalement non
restore-failed = la copie « { $name } » est abîmée ou d’une autre version et ne peut pas prendre la place du registre ; choisis-en une autre

hand-over-title = Carte du bijou { $number }
hand-over-piece = Bijou { $number }
card-not-known = On ne sait pas en quoi c’est fait.
card-keep = Garde cette carte : par son numéro, l’atelier retrouve avec quoi le bijou a été fait.
paper-link-card = Carte du bijou
