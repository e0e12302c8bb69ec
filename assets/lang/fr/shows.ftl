# The desk in French: the show, practice, trays.

# What a show is.
show-title = Vente
show-kind-fair = marché
show-kind-open_house = portes ouvertes
show-kind-home_party = soirée à domicile
show-kind-childrens_party = fête d’enfants
show-kind-practice = exercice
show-name = Vente { $show }
show-name-at = Vente { $show }, { $place }
show-practice = Exercice
show-no-tax = pas de taxe ici
show-tax = { $percent } % de taxe ici
show-float = fond de caisse { $amount }
show-fee = droit de place { $amount }
show-host = hôtesse : { $host }
show-since = En cours depuis { $when }
show-what-it-is = Ce que c’est
show-change = Changer
show-which = Quelle est cette vente ?
show-which-hint = Lieu, taxe, droit de place et fond de caisse en font alors partie. Elle marche aussi sans, avec la taxe de la table.
show-close = Clore la vente
show-practise = S’exercer
show-earlier = Ventes précédentes

# Telling what it is.
about-title = Quelle est la vente ?
about-ask = Qu’est-ce que la vente { $show } ?
about-kind = Quel genre d’événement
about-not-told = pas dit
about-place = Où se tient la table
about-place-hint = par exemple : rue du Moulin, salle 2
about-tax = Taxe du lieu, en pour cent
about-own-none = vide : la table n’affiche pas de taxe
about-own-added = en plus des prix marqués ; vide : { $percent } %, comme la table l’a
about-own-included = comprise dans les prix marqués ; vide : { $percent } %, comme la table l’a
about-on-top = en plus des prix marqués
about-contained = comprise dans ceux-ci
about-float = Espèces dans la caisse avant la première vente ({ $currency })
about-float-hint = le fond de caisse
about-fee = Droit de place ({ $currency })
about-fee-hint = ce que coûte la place
about-host = Hôtesse
about-host-hint = une étiquette pour la récompense, par exemple : hôtesse de la rue du Moulin ; aucun nom n’est nécessaire
about-keep = Garder cela
about-hint = Ce que tu laisses vide n’est pas dit. Tout peut changer tant que la vente est en cours ; chaque changement est noté.
typed-no-fee = « { $found } » n’est pas un droit de place ; écris un montant jusqu’à { $most }, comme { $like }.
typed-no-float = « { $found } » n’est pas un fond de caisse ; écris un montant jusqu’à { $most }, comme { $like }.
typed-no-sum = « { $found } » n’est pas une somme d’espèces ; écris un montant jusqu’à { $most }, comme { $like }.
typed-no-tax = « { $found } » n’est pas une taxe ; écris un pourcentage de 0 à 100, comme { $like }.
typed-no-count = « { $found } » n’est pas un nombre de { $piece } ; écris un nombre entier.

# Counting the cash and closing.
close-title = Clore la vente ?
close-ask = Clore la vente { $show } ?
close-open = { $n ->
    [0] Aucun ticket n’est ouvert.
    [one] { $n } ticket est encore ouvert ; il est abandonné, et ses breloques sont de nouveau libres.
   *[other] { $n } tickets sont encore ouverts ; ils sont abandonnés, et leurs breloques sont de nouveau libres.
  }
close-next = La vente suivante commence aussitôt, et ses numéros repartent de zéro.
close-cash = Les espèces
cash-before = Dans la caisse avant la première vente
cash-moved = Entré, moins ce qui est sorti
cash-should-be = Devrait y être
close-counted = Compté dans la caisse ({ $currency })
close-counted-hint = Vide : personne n’a compté, ou billet par billet plus bas.
close-pieces = Compter billets et pièces
close-not-alike = Billet par billet, cela fait { $pieces }, et la somme dit { $sum } ; recompte, ou laisse l’une des deux vide.
refused-not-running = la vente { $show } n’est pas celle en cours

# A show’s sums.
sums = Sommes
sums-rung-up = Tickets encaissés
sums-let-go = Abandonnés
sums-let-go-closing = { $n }, dont { $closing } à la clôture
sums-cash = En espèces
sums-card = Par carte
sums-way = Par « { $way } »
sums-paid-out = Dont remboursé
sums-owing = Payé pour ce qui n’est pas encore vendu
sums-tax = Taxe comprise dedans
sums-rate = { $rate } % sur { $net }
sums-discounts = Rabais et remises accordés
sums-back = { $n ->
    [one] Repris, { $n } fois
   *[other] Repris, { $n } fois
  }
sums-rounding = Arrondi des espèces
sums-taken = Encaissé
sums-late = Dont en retard, de ventes précédentes
sums-late-tickets = { $n ->
    [one] { $n } ticket, { $amount }
   *[other] { $n } tickets, { $amount }
  }
sums-kept-open = Restés ouverts, payés en partie
sums-let-go-earlier = Abandonnés, de ventes précédentes
sums-set-apart = Le ticket { $number } a été compté { $charged }, ce qui n’est dans aucune de ces sommes : c’est une autre monnaie, ou aucune table n’encaisse autant.
sums-too-large = trop grand pour être additionné
cash-title = Espèces
cash-counted = Compté
cash-agrees = C’est juste
cash-missing = Il manque
cash-too-much = En trop
cash-difference = Différence
cash-not-counted = pas compté
earned = Ce qui reste
earned-title = Après taxe, droit de place et récompense
earned-sold = Vendu, sans la taxe
earned-fee = Droit de place
earned-reward = Récompense de l’hôtesse
earned-pieces-up-to = { $n ->
    [one] { $n } bijou offert, jusqu’à { $amount }
   *[other] { $n } bijoux offerts, jusqu’à { $amount } chacun
  }
earned-left = Reste
earned-profit = Bénéfice, avant tes heures
earned-profit-hint = Les pièces comptent aux recettes et lots d’aujourd’hui. Tes heures et le trajet n’y sont pas.
earned-hint = Le coût des éléments n’est pas connu, ou pas celui de tous ; ce n’est donc pas le bénéfice.
sold-title = Vendu, par case
sold = Vendu
sold-by-sort-title = Vendu, par sorte
sold-by-sort = Vendu par sorte
sold-what = Quoi
sold-home = Case
sold-part = Élément
sold-back = Repris
sold-left = Reste
sold-marked = Prix affiché
sold-sort = Sorte
sold-sort-base = bases
sold-sort-Charm = motifs
sold-sort-Bead = perles
sold-sort-Vial = fioles
sold-sort-Locket = médaillons
sold-sort-Key = clés
sold-sort-Crystal = cristaux
sold-sort-Tassel = pompons
sold-sort-Found = trouvailles

# A closed show.
closed-title = Clôture de la vente { $show }
closed-title-at = Clôture de la vente { $show }, { $place }
closed-practice = Clôture de l’exercice
closed-when = { $table }, close { $when }
closed-came-late = Arrivés tard
closed-came-after = Arrivés après la clôture
closed-came-after-hint = Ils ne sont pas dans les sommes ci-dessus. Chacun compte dans la vente où il a été encaissé.
closed-came-to = { $state } à la vente { $show }
closed-left = Tout ce qui restait
closed-print = Imprimer
closed-to-running = À la vente en cours
files = Fichiers
files-hint = Tableaux pour un tableur : montants avec un point, comme 8.50, ou une virgule, comme 8,50.
files-lines = Ce qui s’est vendu, par case
files-tickets = Tous les tickets
files-money = L’argent
files-tax = La taxe par taux
files-left = Ce qui reste
files-all = Le tout (JSON)
refused-nothing-called = il n’y a rien qui s’appelle « { $name } » à cette caisse
refused-not-closed = la vente { $show } n’a pas été close à cette caisse
refused-no-show = il n’y a pas de vente { $show } à cette caisse
refused-no-file = le fichier n’a pas pu être fait

# Practice.
practice-ask = S’exercer ?
practice-ask-text = Tout marche comme d’habitude, à la caisse et sur les tablettes, et rien ne compte : aucun stock n’est pris, aucun numéro n’est utilisé, et chaque écran dit « Exercice ». Tant qu’il dure, rien ne peut vraiment être vendu.
practice-open-wait = { $n ->
    [one] Le ticket ouvert attend la fin de l’exercice.
   *[other] Les { $n } tickets ouverts attendent la fin de l’exercice.
  }
practice-begin = Commencer l’exercice
practice-end-text = Tout ce qui a été fait depuis le début de l’exercice est jeté à la fin ; tout redevient comme avant.
practice-end = Terminer l’exercice
