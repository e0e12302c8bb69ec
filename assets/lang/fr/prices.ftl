# The desk in French: what things cost and earn.

prices-title = Coûts et prix
prices-travel = Trajet, aller et retour
prices-pieces = Pièces que tu penses vendre, bases et pendentifs comptés un à un
prices-points = Combien de prix différents au plus
prices-of = Ce que ferait un autre prix : pour
prices-to = L’autre prix, en { $currency }
prices-reckon = Calculer
prices-change = Ce que ferait un autre prix
prices-earns = Une pièce gagne alors { $then } au lieu de { $now }.
prices-same = { $n ->
    [one] S’il s’en vend alors 1 sur un marché, elle gagne ce que { $sold } gagnent maintenant : { $earned }.
   *[other] S’il s’en vend alors { $n } sur un marché, elles gagnent ce que { $sold } gagnent maintenant : { $earned }.
  }
prices-never = Quel que soit le nombre vendu, elles ne gagnent jamais ce qui est gagné maintenant : { $earned }.
prices-at-a-loss = Tel quel, chacun perd { $loss } une fois comptée sa part du stand.
prices-by-price = Par prix
prices-suggested = { $n ->
    [one] D’après les coûts, un prix suffirait : { $points }.
   *[other] D’après les coûts, ces quelques prix suffiraient : { $points }.
  }
prices-even = { $n ->
    [one] 1 pièce gagne le stand de { $stall }, à { $earned } la pièce, comme tu vends.
   *[other] { $n } pièces gagnent le stand de { $stall }, à { $earned } la pièce, comme tu vends.
  }
prices-never-even = Aucun nombre de pièces ne gagne le stand de { $stall } : elles coûtent plus qu’elles ne rapportent.
prices-price = Prix
prices-at = { $n ->
    [one] 1 sorte ; { $sold } vendues par marché
   *[other] { $n } sortes ; { $sold } vendues par marché
  }
prices-margin = Gagne une pièce
prices-least = celle qui gagne le moins : { $amount }
prices-each = Pièce par pièce
prices-about = Les coûts sont les pièces d’après tes lots, les minutes à ton tarif et la part du stand. Un « ? » figure là où parts.ron n’a pas de recette ou de lot.
prices-costs = Prix { $price }, coûte { $cost }.
prices-point = D’après son coût : { $point }
prices-longest = Dans sa plus grande longueur elle coûte { $cost }, au même prix.
prices-no-pieces = « { $found } » n’est pas un nombre de pièces ; écris un nombre entier jusqu’à 100000.
prices-no-points = « { $found } » n’est pas un nombre de prix ; écris-en un de 1 à { $most }.
prices-no-price = { $why }
prices-no-cost = Ce que coûte « { $name } » n’est pas connu : parts.ron n’a pas de recette ou de lot pour cela.
