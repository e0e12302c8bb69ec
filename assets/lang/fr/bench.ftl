# The desk in French: the bench, before and after a show.

tab-bench = Établi
bench-how-many = Combien en faire ?
bench-from-shows = { $n ->
    [0] Aucune vente n’est encore close : les comptes du catalogue servent d’estimation.
    [one] D’après la seule vente jusqu’ici. Huit ventes sur dix demandent autant que la barre claire le montre.
   *[other] D’après les { $n } ventes jusqu’ici. Huit ventes sur dix demandent autant que la barre claire le montre.
  }
bench-usual-show = N’importe quelle vente
bench-legend-usual = demande habituelle
bench-legend-there = en réserve
bench-legend-take = à emporter
bench-there = Là
bench-make = À faire
bench-usually = D’habitude { $from } à { $to } ; tout vendu : { $percent } %.
bench-basis-shows = { $n ->
    [one] D’après 1 vente.
   *[other] D’après { $n } ventes.
  }
bench-basis-sold-out = { $n ->
    [one] Épuisé à sa seule vente : la demande était plus grande.
   *[other] D’après { $n } ventes, épuisé à { $out } d’entre elles : la demande était plus grande.
  }
bench-basis-sort = Comme d’autres de sa sorte se vendent.
bench-basis-guess = Estimé d’après ton compte.
bench-how-reckoned = On en fait tant qu’un de plus coûterait davantage, s’il reste, qu’il ne rapporterait. Toutes les ventes comptent pareil ; à toi d’ajouter le temps et la saison.
bench-no-recipes = Le coût des pièces n’est pas connu : parts.ron, dans le dossier du catalogue, dit de quoi les breloques sont faites. Jusque-là, la moitié du prix tient lieu de coût.
bench-no-numbers = Aucun nombre ne peut être calculé : un compte du registre ou du catalogue dépasse celui de toute vente.
bench-after = Après les ventes
bench-restock = Ce qu’il faut refaire
bench-close-out = La clôture de cette vente
bench-file-wrong = parts.ron a des fautes ; l’établi s’en passe
bench-cuts = Couper les bobines
after-net = Vendu, sans la taxe
after-parts = Pièces comprises
after-fee = Droit de place
after-reward = Remerciement de l’hôte
after-for-work = Reste pour ton travail
after-work = Tes heures à ton tarif
after-beyond = Au-delà de tes heures
after-without-cost = { $n ->
    [one] 1 pièce n’est pas dans ces coûts : parts.ron n’a pour elle ni recette ni lot.
   *[other] { $n } pièces ne sont pas dans ces coûts : parts.ron n’a pour elles ni recette ni lot.
  }
after-todays-costs = Les coûts sont ceux des recettes et des lots d’aujourd’hui. Le trajet n’y est pas.
after-by-sort = Ce qui s’est vendu, par sorte
after-sort = Sorte
after-sold = Vendu
after-margin = Gagné
after-by-home = Ce qui s’est vendu, par case
cuts-from = Couper dans
cuts-length = Longueur, comme 18in ou 45cm
cuts-count = Combien
cuts-hint = Ce qui reste vide n’est pas coupé. Ce qui reste d’une bobine, s’il est assez long, est gardé.
cuts-plan = Prévoir les coupes
cuts-better = Chercher un meilleur plan
cuts-searching = Recherche depuis { $n } s. Le plan ci-dessous est déjà bon.
cuts-searching-so-far = Recherche depuis { $n } s : le meilleur trouvé est au plus { $percent } % au-dessus du meilleur plan possible.
cuts-stop = Arrêter et montrer le meilleur trouvé
cuts-list = Couper et cocher
cuts-spool = De { $length } :
cuts-times = { $n } × { $length }
cuts-stays = il en reste { $length }
cuts-lost = { $length } de perte
cuts-missing = Les bobines ne suffisent pas. Il manque : { $what }.
cuts-sum = Pris sur les bobines : { $drawn }, dont perdu : { $lost }.
cuts-proven = Aucun plan ne perd moins.
cuts-gap = Au plus { $percent } % au-dessus du meilleur plan possible.
cuts-no-length = « { $found } » n’est pas une longueur ; écris 18in ou 45cm.
cuts-no-count = On ne peut pas lire combien de { $length } il faut ; écris un nombre entier jusqu’à 10000.
cuts-impossible = Dans « { $part } » on ne peut pas couper cela ; choisis ce qui est sur bobine, et des longueurs plus grandes que zéro.
backup-title = Mettre en sûreté
backup-about = La copie contient tout ce que la caisse a inscrit, elle est relue et reste à côté du registre. Garde-la aussi ailleurs : sur une clé, sur un autre ordinateur. Elle contient des clés d’accès, ne la donne à personne.
backup-do = Copier maintenant
backup-save = Garder ailleurs
backup-none = Il n’y a pas encore de copie du registre.
backup-old = La dernière copie du registre est du { $day }.
backup-failed = Le registre n’a pas pu être copié, et aucune copie n’a été gardée ; regarde quelle place il reste sur le disque.
backup-restore = Une copie qui se trouve ailleurs prend la place du registre par chatelaine restore --from FICHIER quand la caisse ne tourne pas. Ce qu’elle remplace est gardé dans un dossier à côté.
bench-nothing-to-make = Rien n’est à faire : il y a assez de tout.
bench-enough = Il y en a assez
