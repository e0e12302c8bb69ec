# The desk in French: lots as they are written down, and spools that are promised.

lot-write = Noter un lot
lot-part = Pièce détachée
lot-name = Numéro que le fournisseur donne au lot
lot-day = Jour où il est arrivé
lot-amount = Combien est arrivé : pièces, ou la longueur comme 20m
lot-count = Combien de pièces sont arrivées
lot-length = Longueur arrivée, comme 20m
lot-spools = Sur combien de bobines, si cela va à la longueur
lot-broken = Dont cassé : pièces, ou millimètres
lot-price = Ce que le tout a coûté, en { $currency }
lot-paper = Rapport d’essai ou déclaration du fournisseur
lot-paper-hint = Quel papier, et où tu le gardes. C’est ce que tu montres quand quelqu’un demande d’où vient ce lot.
lot-put-away = Ajouter ce qui est entier au tiroir, ou aux bobines sur l’établi
lot-keep = Garder
lot-change = Modifier { $lot }
lot-strike = Rayer ce lot
lot-drawers-stay = Tiroir et bobines restent tels quels ; seul ce qui est dit du lot change.
lot-did-write = lot { $lot } noté
lot-did-change = lot { $lot } modifié
lot-did-strike = lot { $lot } rayé
lot-no-part = Aucune pièce ne porte ce nom ; choisis-en une dans la liste. Les pièces sont dans parts.ron.
lot-no-name = Écris comment le fournisseur appelle le lot, en { $most } lettres au plus.
lot-no-amount = Écris combien de « { $part } » sont arrivées, à partir de 1.
lot-too-broken = Il y a plus de cassé que d’arrivé ; écris combien était cassé.
lot-no-spools = « { $found } » n’est pas un nombre de bobines ; écris-en un de 1 à { $most }.
lot-no-paper = Dis en { $most } lettres au plus quel papier c’est et où il se trouve.
lot-there = le lot { $lot } de cette pièce et de ce jour est déjà noté ; modifie-le là-bas
lot-none = il n’y a pas de lot « { $lot } » de cette pièce et de ce jour
lot-no-workshop = le dossier du catalogue n’a pas encore de parts.ron, qui dit de quoi les pendentifs sont faits
lot-file-wrong = parts.ron a des erreurs, que montrent les pages de l’établi ; corrige-les d’abord, rien n’a été écrit

cuts-promised = { $n ->
    [one] Laissée de côté, car une liste en cours la coupe : { $what }.
   *[other] Laissées de côté, car des listes en cours les coupent : { $what }.
  }
cuts-not-there = Il n’y a plus de bobine ni de chute de { $length } : une autre liste l’a coupée, ou les bobines ont été recomptées. Rien n’a été coché ; range cette liste et prévois de nouveau.
cuts-rest-gone = Ce qui restait de cette bobine, { $length }, a été coupé depuis, donc la coche reste. Rien n’a été changé.
