# The desk in Spanish: the tickets' pages.

# Who a piece is for.
for-under3 = para menores de 3
for-from3to5 = para 3 a 5 años
for-from6to12 = para 6 a 12 años
for-from13 = para 13 o más
for-unknown = no se preguntó para quién

# Counts, lengths and what is left.
count-drops = { $n ->
    [one] { $n } colgante
   *[other] { $n } colgantes
  }
count-tickets = { $n ->
    [one] { $n } ticket
   *[other] { $n } tickets
  }
count-parts = { $n ->
    [one] { $n } parte
   *[other] { $n } partes
  }
count-more-parts = { $n ->
    [one] { $n } parte más
   *[other] { $n } partes más
  }
count-times = { $n ->
    [one] { $n } vez
   *[other] { $n } veces
  }
count-minutes = { $n ->
    [one] { $n } minuto
   *[other] { $n } minutos
  }
count-free-pieces = { $n ->
    [one] { $n } pieza gratis
   *[other] { $n } piezas gratis
  }
count-files = { $n ->
    [one] { $n } archivo
   *[other] { $n } archivos
  }
length-both = { $cm } cm · { $inches } in
free-all-held = todos reservados
free-none = agotado
free-some = { $n ->
    [one] { $n } libre
   *[other] { $n } libres
  }
none-left-touch = Según el recuento ya no queda «{ $name }». Si lo tienes delante, toca «Está aquí».
no-picture = sin imagen

# What became of a ticket.
state-sent = enviado
state-called = llamado
state-checked = revisado
state-rung_up = cobrado
state-handed_over = entregado
state-let_go = descartado
state-taken_back = devuelto
