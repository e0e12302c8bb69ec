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
count-parts = { $n ->
    [one] { $n } élément
   *[other] { $n } éléments
  }
count-more-parts = { $n ->
    [one] encore { $n } élément
   *[other] encore { $n } éléments
  }
count-times = { $n ->
    [one] { $n } fois
   *[other] { $n } fois
  }
count-minutes = { $n ->
    [one] { $n } minute
   *[other] { $n } minutes
  }
count-free-pieces = { $n ->
    [one] { $n } bijou offert
   *[other] { $n } bijoux offerts
  }
count-files = { $n ->
    [one] { $n } fichier
   *[other] { $n } fichiers
  }
length-both = { $cm } cm · { $inches } in
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
