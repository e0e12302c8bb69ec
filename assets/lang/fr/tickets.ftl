# The desk in French: the tickets' pages.

# Who a piece is for.
for-under3 = pour moins de 3 ans
for-from3to5 = pour 3 à 5 ans
for-from6to12 = pour 6 à 12 ans
for-from13 = pour 13 ans ou plus
for-unknown = pas demandé pour qui

# Counts, lengths and what is left.
count-drops = { $n ->
    [one] { $n } breloque
   *[other] { $n } breloques
  }
count-tickets = { $n ->
    [one] { $n } ticket
   *[other] { $n } tickets
  }
count-free-pieces = { $n ->
    [one] { $n } bijou offert
   *[other] { $n } bijoux offerts
  }
length-both = { $cm } cm · { $inches } in
free-all-held = tout est réservé
free-none = épuisé
free-some = { $n ->
    [one] { $n } libre
   *[other] { $n } libres
  }
none-left-touch = D’après le stock, il ne reste plus de « { $name } ». S’il est devant toi, touche « Il est là ».
no-picture = pas d’image

# What became of a ticket.
state-sent = envoyé
state-called = appelé
state-checked = vérifié
state-rung_up = encaissé
state-handed_over = remis
state-let_go = abandonné
state-taken_back = repris

# All tickets.
queue-new-sale = Nouvelle vente
queue-find = Chercher par numéro
queue-find-do = Chercher
queue-paid-sale = Chercher une vente payée
queue-waiting = En attente
queue-waiting-none = Personne n’attend. Les tickets des tablettes apparaissent ici tout seuls.
queue-checked = Vérifiés
queue-checked-none = Rien n’attend le paiement.
queue-done = Terminés
queue-done-none = Rien n’a encore été encaissé à cette vente.
queue-bills = Notes ouvertes
queue-bill = { $n ->
    [one] Note { $number }, { $n } ticket
   *[other] Note { $number }, { $n } tickets
  }
queue-bill-part = { $n ->
    [one] Note { $number }, { $n } ticket, payée en partie
   *[other] Note { $number }, { $n } tickets, payée en partie
  }
queue-older = Voir les précédents
queue-later = Voir les suivants
queue-all = Vers tous les tickets
queue-of-show = de la vente { $show }
queue-not-suitable = ne convient pas à cette personne
queue-not-held = un élément n’est pas réservé
queue-unreadable = Ce ticket est illisible
queue-numbered = Tickets { $number }
queue-several = Plusieurs tickets ont ce numéro. Compare le bijou.
queue-found = Trouvés
queue-none-arrived = Aucun ticket { $number } n’est encore arrivé à cette caisse.
refused-no-group = { $name } n’est pas un groupe de tickets ; il y a waiting, checked et done

# One ticket: its piece.
ticket-title = Ticket { $number }
ticket-piece = Le bijou
ticket-came = arrivée : { $ago }, vente { $show }
ticket-as-it-should = Le bijou tel qu’il doit être
ticket-drops-nearer = Ses breloques, de plus près
ticket-number-called = Numéro appelé
ticket-who = Pour qui c’est ; les avis en dépendent
ticket-one-more = Un autre comme celui-ci
ticket-set = Fixer
ticket-length-free = Longueur, sans frais
ticket-shorter = un pouce plus court
ticket-longer = un pouce plus long

# Ticking off.
tick-title = Cocher
tick-tally = { $done } sur { $all }
tick-all = Tout est là
tick-sign = coché
tick-base = base
tick-instead = au lieu de { $name }
tick-taken-off = enlevé
tick-missing = Manque ?
tick-missing-of = Manque ? { $name }
tick-here = Il est là : en compter un de plus
tick-none-left = D’après le stock, il n’en reste pas.

# Changing the piece.
change-title = Changer le bijou
change-add = Ajouter une breloque, par sa case
change-add-do = Ajouter
change-base = Base ; les breloques restent
change-no-home = Aucune breloque n’est en « { $typed } ». Une case, c’est la lettre d’un plateau et un numéro, comme B3.
change-none-left = D’après le stock, il ne reste plus de « { $name } ».
change-here = Il est là : en compter un de plus et l’ajouter

# Letting go.
let-go-ask = Abandonner le ticket { $number } ?
let-go-text = Ses breloques sont libres tout de suite pour d’autres. Le ticket ne peut pas être repris.
let-go-yes = Abandonner
let-go-title = Abandonner ?
let-go-do = Abandonner le ticket

# What the page’s forms never send.
refused-part = { $found } n’est pas un élément d’un bijou ; envoie base ou le numéro de la ligne
refused-length = une longueur est un nombre de millimètres de { $least } à { $most }
refused-wearer = { $found } ne dit pas pour qui c’est ; envoie un de { $codes }
refused-charge = { $found } n’est pas une somme ; envoie seen ou today

# A drop is missing.
missing-page = Il manque une breloque
missing-title = { $name } ({ $home }) manque
missing-take-off = L’enlever du bijou
missing-instead = Ou en accrocher une autre à la place
missing-search = Chercher par nom, couleur ou case
missing-search-do = Chercher
missing-nothing = Rien qui convienne et soit en stock.
missing-first = Les { $shown } premières sur { $all } ; cherche pour en voir d’autres.
missing-not-for = Pas pour cette personne
missing-price-free = { $price } · reste { $free }

# What happened so far.
history-title = Ce qui s’est passé
history-others = Autres tickets avec ce numéro
history-other = de la vente { $show }, { $state }
history-by = – par { $name }
history-sent = envoyé par le client
history-opened = ouvert à la caisse, pour un bijou enfilé à la main
history-all-ticked = tout coché
history-added-counted = { $name } : ajout, un de plus compté
history-added = { $name } : ajout
history-added-one = une breloque ajoutée
history-base = base changée : { $name }
history-called = appelé
history-ticked-counted = { $name } : coché, un de plus compté
history-ticked = { $name } : coché
history-unticked = { $name } : coche retirée
history-swapped = une breloque échangée contre { $name }
history-swapped-one = une breloque échangée
history-removed = { $name } : enlevé
history-removed-one = une breloque enlevée
history-length = longueur changée : { $length }
history-length-other = une autre longueur
history-judged = le catalogue a changé, et les avis avec lui
history-wearer-unknown = personne ne sait pour qui c’est
history-wearer = c’est { $wearer }
history-wearer-other = pour quelqu’un d’autre
history-grown-up = vendu pour un adulte : { $hazard }
history-grown-up-not = finalement pas vendu pour un adulte : { $hazard }
history-grown-up-one = vendu pour un adulte
history-sum-today = les prix du jour sont facturés
history-sum-seen = la somme que le client a vue est facturée
history-told = le client a été informé des avis
history-told-not = finalement pas informé des avis
history-rung-up = { $way ->
    [cash] encaissé, payé en espèces
    [card] encaissé, payé par carte
   *[other] encaissé, payé par { $name }
  }
history-rung-up-so = encaissé
history-handed-over = remis
history-let-go = abandonné
history-hold-ended = ce qui n’était pas coché n’est plus réservé : il a trop attendu
history-hold-shortened = pas réservé plus longtemps que d’habitude : il est arrivé quand l’horloge avançait
history-reduced-percent = { $percent } % de remise, { $reason }
history-reduced-amount = { $amount } de remise, { $reason }
history-reduced-to = ramené à { $amount }, { $reason }
history-reduced-not = plus de remise à la main
history-reduced-one = une remise à la main
history-package = forfait : { $name }
history-package-none = sans forfait
history-plain = { $name } : ajout, sans case
history-plain-one = quelque chose sans case ajouté
history-plain-off = quelque chose sans case enlevé
history-taken-back-home = repris, les éléments sont dans leurs cases : { $reason }
history-taken-back-gone = repris, les éléments ne sont plus là : { $reason }
history-taken-back = repris
history-line-back-home = { $name } repris en { $home } : { $reason }
history-line-back-gone = { $name } repris, et perdu : { $reason }
history-line-back = une breloque reprise

# A ticket whose entry is damaged.
unreadable-why = Ce ticket est illisible : son entrée dans le livre est abîmée.
unreadable-what-to-do = Tous les autres tickets sont comme avant. Regarde le bijou du client et laisse-le l’envoyer encore une fois ; ce que celui-ci réserve sera libre à la clôture de la vente. Une sauvegarde d’avant l’a peut-être entier.
unreadable-technical = Pour qui regarde le livre : { $why }

# The cautions on a ticket's page.
told-cautions = Avis
told-title = À dire au client
told-read-at-kiosk = Un adulte a confirmé sur la tablette les avoir lus.
told-done = Dit au client
told-was = Le client a été informé.
told-forbidden-piece = Il est interdit de vendre un élément de ce bijou à qui que ce soit. Enlève-le du bijou.
told-not-everyone = Ce bijou ne convient pas à tous, et personne n’a dit pour qui il est.
told-not-suitable = Ce bijou ne convient pas : { $wearer }.
told-change-or-confirm = Change le bijou ou la personne, ou confirme ci-dessous chaque danger par son nom : il est alors vendu pour un adulte, et le livre le garde.
told-suits-nothing = Rien sur cette table ne convient.
told-suits = Sur cette table conviennent : { $names }.
told-suits-more = Sur cette table conviennent : { $names } et encore { $n }.
told-never-sold = Il est interdit de le vendre à qui que ce soit.
told-grown-up = Vendu pour un adulte : { $hazard }
told-grown-up-was = Vendu pour un adulte : { $hazard }.

# The sum, and what comes next.
sum-title = La somme
sum-subtotal = Sous-total
sum-taken-off = Remise, { $reason }
sum-discount = Remise
sum-tax = Taxe
sum-tax-inside = Taxe comprise
sum-total = Total
sum-prices-changed = Des prix ont changé depuis que le client a vu cette somme : le bijou tel qu’envoyé coûterait maintenant { $sum }. Le client paie ce qu’il a vu à l’écran.
sum-refund = Rembourser ou échanger
sum-hand-over = Remis
sum-let-go = Ce ticket n’a pas eu de suite ; ses breloques sont de nouveau libres.
sum-taken-back = Ce bijou a été payé puis repris.
sum-to-bill = Vers sa note
sum-paid = { $way ->
    [cash] Payé { $sum } en espèces.
    [card] Payé { $sum } par carte.
   *[other] Payé { $sum } par { $name }.
  }
sum-paid-over = { $way ->
    [cash] Payé { $sum } en espèces et remis.
    [card] Payé { $sum } par carte et remis.
   *[other] Payé { $sum } par { $name } et remis.
  }
sum-paid-on-bill = Payé, { $sum } sur sa note.
sum-paid-on-bill-over = Payé, { $sum } sur sa note, et remis.
sum-bill-left = Note { $number }, reste { $sum }
sum-implausible = Aucune table ne prend une telle somme. Abandonne le ticket.
sum-say-charged = Dis d’abord ce qui est facturé.
sum-first = D’abord : { $what }.
sum-and = { $one } et { $other }
first-tick = { $n ->
    [one] cocher encore { $n } élément
   *[other] cocher encore { $n } éléments
  }
first-tell = dire les avis au client
first-take-off = enlever ce qu’il est interdit de vendre
first-confirm = changer le bijou ou la personne, ou confirmer qu’il est vendu pour un adulte : { $hazards }
sum-cash-rounded = Les espèces sont arrondies à { $step }.
sum-given = Ou les espèces données
sum-together = Avec d’autres, en plusieurs fois, acompte
sum-changed = La somme est passée à { $sum } entre-temps. Regarde encore le bijou ; rien n’a été encaissé.

# The bar at the foot of the screen.
bar-tick = { $n ->
    [one] { $n } à cocher
   *[other] { $n } à cocher
  }
bar-tell = à dire au client
bar-hazards = ne convient pas : décider
bar-sum = dire ce qui est facturé
bar-ready = prêt
bar-paid = payé
bar-pay = Payer

# Where the sum is none of this table’s.
which-not-ours = La tablette a montré { $sum } au client, ce que ces éléments n’ont jamais coûté à cette table. Que facturer ?
which-currency = La tablette a montré { $sum } en { $currency } au client, ce que cette table n’accepte plus. Que facturer ?
which-seen = Ce que le client a vu, { $sum }
which-today = Les prix du jour
which-today-sum = Les prix du jour, { $sum }

# The price by hand.
price-title = Prix à la main
price-package = Forfait pour une fête
price-package-of = { $name } : base et { $n }, { $price }
price-no-package = Sans forfait
price-package-gone = Il n’y a plus de forfait { $name }.
price-without-home = Sur le bijou, sans case : d’un plateau mélangé, ou au client lui-même
price-what = Ce que c’est
price-its-price = Son prix ; 0 si c’est au client
price-add = Ajouter
price-off = enlever { $name }
price-because = Faire une remise, pour
price-reason-friend = un ami
price-reason-flaw = un petit défaut
price-reason-several = plusieurs bijoux
price-reason-host = cadeau de l’hôtesse
price-reason-round = pour une somme ronde
price-to = À { $sum }
price-percent = Pour cent
price-percent-off = % de remise
price-amount = Montant
price-amount-off = de remise
price-nothing-off = Pas de remise

# A piece that was threaded by hand.
sale-title = Nouvelle vente
sale-no-drop = Aucune breloque n’est en { $homes }. Une case, c’est la lettre d’un plateau et un numéro, comme B3.
sale-no-drops = Aucune breloque n’est en { $homes }. Une case, c’est la lettre d’un plateau et un numéro, comme B3.
sale-quoted = « { $home } »
sale-does-it-lie = D’après le stock, il ne reste plus de « { $name } ». Est-il devant toi ?
sale-begin-with = Commencer par le bijou d’un ticket, par son numéro
sale-take = Prendre
sale-only-goods = Seulement d’autres articles, sans bijou
sale-base = Base
sale-who = Pour qui c’est
sale-who-under3 = moins de 3 ans
sale-who-from3to5 = 3 à 5 ans
sale-who-from6to12 = 6 à 12 ans
sale-who-from13 = 13 ans ou plus
sale-none-yet = Touche une breloque, ou tape sa case. La base seule peut aussi être vendue.
sale-homes = Cases, de gauche à droite
sale-read = Lire
sale-rub-out = effacer le dernier signe
sale-no-sum = Pas de somme
sale-here = Il est là : le compter, et à l’encaissement
sale-to-till = À l’encaissement
sale-tray = Plateau { $letter }
sale-none-left = épuisé
sale-not-counted = pas compté

together-other = { $name } a aussi ce ticket ouvert.
together-own = Tu as aussi ce ticket ouvert sur un autre appareil.
together-changed = Quelqu’un d’autre a changé ce ticket depuis que tu l’as regardé. Rien de toi n’a été inscrit :
together-look-again = Regarde encore une fois et recommence si c’est toujours juste.
