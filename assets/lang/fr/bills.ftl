# The desk in French: bills, paying and sales.

# Ways to pay, amounts, cash that is given.
way-cash = Espèces
way-card = Carte
paid-in-cash = en espèces
paid-by-card = par carte
paid-by-way = par « { $way } »
cash-given = Espèces données
change-due = Donné { $given }, à rendre { $change }
refused-way = on ne paie pas ici avec « { $name } » ; envoie un de { $ways }

# What is typed as an amount and is none, and sums that can’t be: the beginning of a sentence each.
amount-no-price = « { $found } » n’est pas un prix ; écris « 8,50 »
amount-not-above-zero = « { $found } » n’est pas un prix au-dessus de zéro
amount-above-most = « { $found } » n’est pas un prix jusqu’à { $most }
amount-decimals = { $n ->
    [0] « { $found } » n’est pas un prix en { $currency } sans décimales
   *[other] « { $found } » n’est pas un prix en { $currency } avec { $n } décimales au plus
  }
amount-no-percent = « { $found } » n’est pas un pourcentage de 0 à 100 ; écris « 6,25 »
money-price = le prix { $price } de « { $id } » n’est pas entre 0 et { $most }
money-too-large = la somme dépasse { $most }
money-decimals = { $amount } a plus de décimales que sa monnaie
money-absurd = aucune table n’encaisse { $amount }
money-lines = la somme n’est pas celle de ses lignes
money-percent = une remise de { $percent } pour cent n’est pas entre 0 et 100 pour cent
money-below-zero = { $amount } est en dessous de zéro ; une remise retire zéro ou plus et laisse zéro ou plus
money-above-total = { $wish } est plus que la somme de { $total } ; une remise ne fait que retirer
money-too-little = { $given } sont donnés, soit { $missing } de moins que ce qui est dû
money-reward-percent = une récompense de { $percent } pour cent n’est pas entre 0 et 100 pour cent
money-reward-sum = { $amount } n’est pas une somme pour des bijoux offerts ; écris-en une au-dessus de 0 et jusqu’à { $most }
reduce-how-much = Dis de combien est la remise : à une somme ronde, en pour cent ou un montant.

# A bill and what is on it.
bill-title = Note { $number }
bill-items = Sur la note
bill-gifts = Cadeaux, emballés à part
bill-to-ticket = au ticket { $number }
bill-gift = Cadeau
bill-no-gift = Pas un cadeau
bill-ticket-off = retirer { $number } de la note
bill-take-back = Reprendre
bill-parts-to-tick = { $n ->
    [one] { $n } élément à cocher
   *[other] { $n } éléments à cocher
  }
bill-tell-cautions = dire les alertes au client
bill-say-sum = dire ce qui est compté
bill-not-for-wearer = pas encore pour cet âge
bill-goods = Autres articles
bill-goods-off = retirer { $words }
bill-empty = Elle est encore vide : ajoute un ticket par son numéro ou des articles avec leur prix.
bill-more = Ajouter à la note
bill-add-ticket = Ajouter un ticket par son numéro
bill-add-goods = Ajouter des articles sans case
bill-add = Ajouter
bill-goods-what = Ce que c’est
bill-goods-example = Boîte cadeau
bill-goods-price = Son prix
bill-no-such-ticket = Aucun ticket { $number } n’est encore arrivé à cette caisse.
bill-ticket-not-open = Le ticket { $number } n’est plus ouvert.
bill-tickets-alike = Plusieurs tickets ouverts ont le numéro { $number } : ouvre celui que tu veux, puis sa note.

# Its sum, and how it is paid.
bill-sum = La somme
bill-taken-off = Remise sur les articles
bill-taken-off-because = Remise sur les articles, { $reason }
bill-tax = Taxe en tout
bill-total = Total
bill-so-far = Payé
bill-to-pay-out = À rembourser
bill-left = Reste à payer
bill-paid = Payé.
bill-next-guest = Client suivant
bill-pay-out = Rembourser
bill-or-given = Ou les espèces données
bill-reduce-goods = Faire une remise sur les articles
bill-or-part = Ou une partie : un acompte, ou le premier de deux moyens

# Money that moved, and what was put right.
bill-payments = Paiements
bill-money = Argent
bill-put-right = Corrigé
bill-why-sale = payé
bill-why-part = une partie
bill-why-paid-out = remboursé
bill-why-not-this-way = retiré : c’était un autre moyen
bill-why-this-way = corrigé
bill-in-show = à la vente { $show }
bill-other-way = C’était un autre moyen
bill-why = Pourquoi
bill-wrong-button = mauvais bouton touché
bill-piece-back = Bijou { $number } repris.
bill-some-piece-back = Un bijou repris.
bill-part-back = Repris : { $name }.
bill-some-drop-back = Une breloque reprise.
bill-some-goods-back = Articles repris.
bill-way-put-right = Moyen de paiement corrigé.
bill-because = Raison : { $reason }.
bill-parts-home = Les éléments sont de nouveau dans leurs cases.
bill-parts-gone = Les éléments ne sont plus là.

# Refunds and exchanges.
back-of-bill = De la note { $number }.
back-what = Ce qui revient
back-whole-piece = Tout le bijou, { $number }
back-parts = Ses éléments
back-parts-home = sont de nouveau dans leurs cases : on peut les vendre
back-parts-gone = sont cassés ou perdus
back-reason-mind = a changé d’avis
back-reason-broke = s’est cassé
back-reason-too-much = une ligne de trop
back-reason-size = mauvaise taille
back-reason-present = un cadeau qui ne convenait pas
back-pay-out = Rembourser
back-not-yet = Pas encore : autre chose vient à la place
refused-back = dis ce qui revient

# Finding a sale again.
sales-title = Ventes
sales-find = Retrouver une vente payée
sales-fill-in = Écris ce que tu en sais.
sales-number = Numéro
sales-sum = Somme
sales-day = Jour
sales-home = Case d’une breloque
sales-show = Vente
sales-search = Chercher
sales-found = Trouvées
sales-none = Aucune vente payée n’est comme cela.
sales-newest = Les { $n } plus récentes sont affichées ; dis-en plus sur la vente pour en trouver une plus ancienne.
sales-in-show = vente { $show }
sales-open = Ouvrir
sales-no-show = « { $found } » n’est pas une vente ; écris son numéro, comme 3.
sales-no-day = « { $found } » n’est pas un jour ; écris-le comme 2026-05-31.
sales-no-home = « { $found } » n’est pas une case ; écris la lettre du plateau et le numéro de la case, comme « B3 ».
