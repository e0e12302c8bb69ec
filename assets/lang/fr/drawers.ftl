# The desk in French: drawers, spools, and what is cut at the table.

drawers-title = Tiroirs et bobines
drawers-about = Ce qui s’y trouve, tel que compté, moins ce qu’une liste a coupé ou qu’une vente a pris dans une autre longueur. Ce qui est fait pour les plateaux ne compte ici que lorsque tu comptes.
drawers-pieces = { $n ->
    [one] 1 pièce
   *[other] { $n } pièces
  }
drawers-no-spools = il ne reste aucune bobine
drawers-spools = { $each } ; { $all } en tout
part-new = Noter une pièce détachée
part-name = Comment la pièce s’appelle
part-measure = Comment elle se compte
part-by-piece = à la pièce, dans un tiroir
part-by-length = à la longueur, sur bobines
part-there-now = Ce qu’il y a maintenant : pièces, ou chaque bobine comme 10m ; 735cm
part-offer-amount = Ce qu’un fournisseur vend en une fois : pièces, ou la longueur
part-offer-price = Ce que cela coûte, en { $currency }
part-kerf = Ce que prend chaque coupe, comme 4mm, si cela va à la longueur
part-keep-from = À partir de quelle longueur tu gardes une chute, comme 35cm
part-add = Ajouter ce qui est arrivé
part-add-pieces = Combien de pièces sont arrivées
part-add-spools = Ce qui est arrivé, chaque bobine comme 10m ; 10m
part-add-do = Ajouter
part-count = Recompter
part-count-pieces = Combien de pièces sont dans le tiroir
part-count-spools = Ce qu’il y a, chaque bobine et chaque chute comme 10m ; 735cm
part-strike = Rayer cette pièce
part-less-than-file = parts.ron dit un autre nombre ; des listes et des ventes en ont pris depuis.
part-did-new = pièce { $part } notée
part-did-count = { $part } compté
part-did-add = { $part } ajouté
part-did-strike = pièce { $part } rayée
part-no-name = Écris comment la pièce s’appelle, en { $most } lettres au plus.
part-no-keep-from = Dis à partir de quelle longueur tu gardes une chute, comme 35cm.
part-there = il y a déjà une pièce « { $part } »
part-none = il n’y a pas de pièce « { $part } »
part-used = « { $part } » est dans des recettes ({ $recipes }) et des lots ({ $lots }) ; tant que c’est le cas, elle reste
part-used-since = de ce que cela avait apporté de « { $part } », quelque chose a été coupé ou vendu depuis ; rien n’a été annulé. Compte plutôt ce qu’il y a
table-cuts-title = Coupé à la table
table-cuts-about = Une chaîne d’une autre longueur que celles qui sont prêtes est prise sur sa bobine quand elle est payée, son fermoir et ses anneaux dans leurs tiroirs, d’après la recette. Le plus court morceau qui suffit compte comme coupé ; si tu en as coupé un autre, recompte. Un bijou qui revient n’en rapporte rien.
table-cuts-off = { $part } : { $cut } sur { $from } ;
table-cuts-missing = D’après le compte, il n’y avait pas assez de « { $part } » ; rien n’en a été retiré. Compte ce qu’il y a.
table-cuts-on-ticket = Coupé à la longueur à la table : au paiement, c’est pris sur la bobine, et aucune des chaînes prêtes ne manque. Si c’est coupé puis abandonné, compte la bobine.
table-cuts-taken-back = Sa chaîne était coupée à la longueur : rien n’en revient sur la bobine ni parmi les chaînes prêtes.
history-workbook = longueur prise sur la bobine
begin-parts = Dire de quoi les choses sont faites
begin-hour = Ce que compte une heure de ton travail, en { $currency }
begin-step = Par quels pas les prix se lisent bien sur une petite étiquette, en { $currency }
begin-parts-do = Commencer
begin-parts-about = Cela commence parts.ron dans le dossier du catalogue. Les pièces se notent ici ; celles que prend une breloque ou une base y sont sous recipes. Ce qui n’est pas demandé y est supposé, et le dit.
begin-did = parts.ron commencé
begin-nothing = Rien n’est pas un montant ; écris ce que cela compte.
