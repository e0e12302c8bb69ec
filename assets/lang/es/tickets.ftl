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
count-free-pieces = { $n ->
    [one] { $n } pieza gratis
   *[other] { $n } piezas gratis
  }
length-both = { $cm } cm · { $inches } in
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

# All tickets.
queue-new-sale = Venta nueva
queue-find = Buscar por número
queue-find-do = Buscar
queue-paid-sale = Buscar una venta pagada
queue-waiting = En espera
queue-waiting-none = No espera nadie. Los tickets de las tabletas aparecen aquí solos.
queue-checked = Revisados
queue-checked-none = Nada espera el pago.
queue-done = Terminados
queue-done-none = En esta feria todavía no se ha cobrado nada.
queue-bills = Cuentas abiertas
queue-bill = { $n ->
    [one] Cuenta { $number }, { $n } ticket
   *[other] Cuenta { $number }, { $n } tickets
  }
queue-bill-part = { $n ->
    [one] Cuenta { $number }, { $n } ticket, pagada en parte
   *[other] Cuenta { $number }, { $n } tickets, pagada en parte
  }
queue-older = Ver anteriores
queue-later = Ver posteriores
queue-all = A todos los tickets
queue-of-show = de la feria { $show }
queue-not-suitable = no apto para esta persona
queue-not-held = una parte no está reservada
queue-unreadable = Este ticket no se puede leer
queue-numbered = Tickets { $number }
queue-several = Varios tickets tienen este número. Compara la pieza.
queue-found = Encontrados
queue-none-arrived = A esta caja todavía no ha llegado ningún ticket { $number }.
refused-no-group = { $name } no es un grupo de tickets; hay waiting, checked y done

# One ticket: its piece.
ticket-title = Ticket { $number }
ticket-piece = La pieza
ticket-came = llegada: { $ago }, feria { $show }
ticket-as-it-should = Así debe quedar la pieza
ticket-drops-nearer = Sus colgantes, de cerca
ticket-number-called = Número llamado
ticket-who = Para quién es; los avisos dependen de eso
ticket-one-more = Otra como esta
ticket-set = Fijar
ticket-length-free = Largo, sin coste
ticket-shorter = una pulgada más corto
ticket-longer = una pulgada más largo

# Ticking off.
tick-title = Marcar
tick-tally = { $done } de { $all }
tick-all = Todo está
tick-sign = marcado
tick-base = base
tick-instead = en lugar de { $name }
tick-taken-off = quitado
tick-missing = ¿Falta?
tick-missing-of = ¿Falta? { $name }
tick-here = Está aquí: contar uno más
tick-none-left = Según el recuento no queda ninguno.

# Changing the piece.
change-title = Cambiar la pieza
change-add = Añadir un colgante, por su casilla
change-add-do = Añadir
change-base = Base; los colgantes se quedan
change-no-home = En «{ $typed }» no hay ningún colgante. Una casilla es la letra de una bandeja y un número, como B3.
change-none-left = Según el recuento ya no queda «{ $name }».
change-here = Está aquí: contar uno más y añadirlo

# Letting go.
let-go-ask = ¿Descartar el ticket { $number }?
let-go-text = Sus colgantes quedan libres enseguida para otros. El ticket no se puede recuperar.
let-go-yes = Descartar
let-go-title = ¿Descartar?
let-go-do = Descartar el ticket

# What the page’s forms never send.
refused-part = { $found } no es parte de una pieza; envía base o el número de la línea
refused-length = un largo es un número de milímetros de { $least } a { $most }
refused-wearer = { $found } no dice para quién es; envía uno de { $codes }
refused-charge = { $found } no es una suma; envía seen o today

# A drop is missing.
missing-page = Falta un colgante
missing-title = Falta { $name } ({ $home })
missing-take-off = Quitarlo de la pieza
missing-instead = O colgar otro en su lugar
missing-search = Buscar por nombre, color o casilla
missing-search-do = Buscar
missing-nothing = Nada que encaje y quede.
missing-first = Los primeros { $shown } de { $all }; busca para ver otros.
missing-not-for = No es para esta persona
missing-price-free = { $price } · quedan { $free }

# What happened so far.
history-title = Qué ha pasado hasta ahora
history-others = Otros tickets con este número
history-other = de la feria { $show }, { $state }
history-by = – por { $name }
history-sent = enviado por el cliente
history-opened = abierto en la caja, para una pieza enhebrada a mano
history-all-ticked = todo marcado
history-added-counted = { $name } añadido, contado uno más
history-added = { $name } añadido
history-added-one = un colgante añadido
history-base = base cambiada a { $name }
history-called = llamado
history-ticked-counted = { $name }: marcado, contado uno más
history-ticked = { $name }: marcado
history-unticked = { $name }: marca quitada
history-swapped = un colgante cambiado por { $name }
history-swapped-one = un colgante cambiado
history-removed = { $name }: quitado
history-removed-one = un colgante quitado
history-length = largo cambiado: { $length }
history-length-other = otro largo
history-judged = cambió el catálogo, y con él los avisos
history-wearer-unknown = nadie sabe para quién es
history-wearer = es { $wearer }
history-wearer-other = para otra persona
history-grown-up = vendido para un adulto: { $hazard }
history-grown-up-not = al final no vendido para un adulto: { $hazard }
history-grown-up-one = vendido para un adulto
history-sum-today = se cobran los precios de hoy
history-sum-seen = se cobra la suma que vio el cliente
history-told = se le dijeron los avisos al cliente
history-told-not = al final no se le dijeron los avisos
history-rung-up = { $way ->
    [cash] cobrado, pagado en efectivo
    [card] cobrado, pagado con tarjeta
   *[other] cobrado, pagado con { $name }
  }
history-rung-up-so = cobrado
history-handed-over = entregado
history-let-go = descartado
history-hold-ended = lo que no estaba marcado ya no está reservado: esperó demasiado
history-hold-shortened = no se reserva más de lo normal: llegó con el reloj adelantado
history-reduced-percent = { $percent } % de descuento, { $reason }
history-reduced-amount = { $amount } de descuento, { $reason }
history-reduced-to = rebajado a { $amount }, { $reason }
history-reduced-not = ya no hay descuento a mano
history-reduced-one = un descuento a mano
history-package = paquete: { $name }
history-package-none = sin paquete
history-plain = { $name } añadido, sin casilla
history-plain-one = algo sin casilla añadido
history-plain-off = algo sin casilla quitado
history-taken-back-home = devuelto, las partes están en sus casillas: { $reason }
history-taken-back-gone = devuelto, las partes ya no están: { $reason }
history-taken-back = devuelto
history-line-back-home = { $name } devuelto a { $home }: { $reason }
history-line-back-gone = { $name } devuelto, y ya no está: { $reason }
history-line-back = un colgante devuelto

# A ticket whose entry is damaged.
unreadable-why = Este ticket no se puede leer: su entrada en el libro está dañada.
unreadable-what-to-do = Los demás tickets están como estaban. Mira la pieza del cliente y deja que la envíe otra vez; lo que este reserva queda libre al cerrar la feria. Una copia de seguridad anterior puede tenerlo entero.
unreadable-technical = Para quien revise el libro: { $why }

# The cautions on a ticket's page.
told-cautions = Avisos
told-title = Decir al cliente
told-read-at-kiosk = Una persona adulta confirmó en la tableta que los había leído.
told-done = Dicho al cliente
told-was = Se le dijo al cliente.
told-forbidden-piece = Una parte de esta pieza no se puede vender a nadie. Quítala de la pieza.
told-not-everyone = Esta pieza no es apta para todos, y nadie dijo para quién es.
told-not-suitable = Esta pieza no es apta: { $wearer }.
told-change-or-confirm = Cambia la pieza o para quién es, o confirma abajo cada peligro por su nombre: entonces se vende para un adulto, y el libro lo guarda.
told-suits-nothing = En esta mesa no hay nada apto.
told-suits = En esta mesa es apto: { $names }.
told-suits-more = En esta mesa es apto: { $names } y { $n } más.
told-never-sold = No se puede vender a nadie.
told-grown-up = Vendido para un adulto: { $hazard }
told-grown-up-was = Vendido para un adulto: { $hazard }.

# The sum, and what comes next.
sum-title = La suma
sum-subtotal = Subtotal
sum-taken-off = Descuento, { $reason }
sum-discount = Descuento
sum-tax = Impuesto
sum-tax-inside = Impuesto incluido
sum-total = Total
sum-prices-changed = Los precios han cambiado desde que el cliente vio esta suma: la pieza como se envió costaría ahora { $sum }. El cliente paga lo que ponía la pantalla.
sum-refund = Devolver o cambiar
sum-hand-over = Entregado
sum-let-go = Este ticket quedó en nada; sus colgantes están libres otra vez.
sum-taken-back = Esta pieza se pagó y se devolvió.
sum-to-bill = A su cuenta
sum-paid = { $way ->
    [cash] Pagado { $sum } en efectivo.
    [card] Pagado { $sum } con tarjeta.
   *[other] Pagado { $sum } con { $name }.
  }
sum-paid-over = { $way ->
    [cash] Pagado { $sum } en efectivo y entregado.
    [card] Pagado { $sum } con tarjeta y entregado.
   *[other] Pagado { $sum } con { $name } y entregado.
  }
sum-paid-on-bill = Pagado, { $sum } en su cuenta.
sum-paid-on-bill-over = Pagado, { $sum } en su cuenta y entregado.
sum-bill-left = Cuenta { $number }, faltan { $sum }
sum-implausible = Ninguna mesa cobra una suma así. Descarta el ticket.
sum-say-charged = Di primero qué se cobra.
sum-first = Primero: { $what }.
sum-and = { $one } y { $other }
first-tick = { $n ->
    [one] marcar { $n } parte más
   *[other] marcar { $n } partes más
  }
first-tell = decir los avisos al cliente
first-take-off = quitar lo que no se puede vender
first-confirm = cambiar la pieza o la persona, o confirmar que se vende para un adulto: { $hazards }
sum-cash-rounded = El efectivo se redondea a { $step }.
sum-given = O el efectivo que dan
sum-together = Junto con otros, por partes, señal
sum-changed = Mientras tanto la suma ha pasado a { $sum }. Mira otra vez la pieza; no se ha cobrado nada.

# The bar at the foot of the screen.
bar-tick = { $n ->
    [one] { $n } por marcar
   *[other] { $n } por marcar
  }
bar-tell = decir al cliente
bar-hazards = no es apto: decidir
bar-sum = decir qué se cobra
bar-ready = listo
bar-paid = pagado
bar-pay = Pagar

# Where the sum is none of this table’s.
which-not-ours = La tableta mostró al cliente { $sum }, que estas partes nunca costaron en esta mesa. ¿Qué se cobra?
which-currency = La tableta mostró al cliente { $sum } en { $currency }, que esta mesa ya no acepta. ¿Qué se cobra?
which-seen = Lo que vio el cliente, { $sum }
which-today = Los precios de hoy
which-today-sum = Los precios de hoy, { $sum }

# The price by hand.
price-title = Precio a mano
price-package = Paquete para una fiesta
price-package-of = { $name }: base y { $n }, { $price }
price-no-package = Sin paquete
price-package-gone = Ya no hay ningún paquete { $name }.
price-without-home = En la pieza, sin casilla: de una bandeja mezclada, o del propio cliente
price-what = Qué es
price-its-price = Su precio; 0 si es del cliente
price-add = Añadir
price-off = quitar { $name }
price-because = Rebajar, por
price-reason-friend = una amistad
price-reason-flaw = un pequeño defecto
price-reason-several = varias piezas
price-reason-host = premio para la anfitriona
price-reason-round = a una suma redonda
price-to = A { $sum }
price-percent = Por ciento
price-percent-off = % menos
price-amount = Cantidad
price-amount-off = menos
price-nothing-off = Sin descuento

# A piece that was threaded by hand.
sale-title = Venta nueva
sale-no-drop = En { $homes } no hay ningún colgante. Una casilla es la letra de una bandeja y un número, como B3.
sale-no-drops = En { $homes } no hay colgantes. Una casilla es la letra de una bandeja y un número, como B3.
sale-quoted = «{ $home }»
sale-does-it-lie = Según el recuento ya no queda «{ $name }». ¿Lo tienes delante?
sale-begin-with = Empezar con la pieza de un ticket, por su número
sale-take = Tomar
sale-only-goods = Solo otros artículos, sin pieza
sale-base = Base
sale-who = Para quién es
sale-who-under3 = menos de 3
sale-who-from3to5 = 3 a 5 años
sale-who-from6to12 = 6 a 12 años
sale-who-from13 = 13 o más
sale-none-yet = Toca un colgante, o escribe su casilla. También se puede vender la base sola.
sale-homes = Casillas, de izquierda a derecha
sale-read = Leer
sale-rub-out = borrar el último signo
sale-no-sum = Sin suma
sale-here = Está aquí: contarlo, y a cobrar
sale-to-till = A cobrar
sale-tray = Bandeja { $letter }
sale-none-left = no queda
sale-not-counted = sin contar

together-other = { $name } también tiene abierto este tique.
together-own = También tienes abierto este tique en otro dispositivo.
together-changed = Alguien más ha cambiado este tique desde que lo miraste. No se ha anotado nada tuyo:
together-look-again = Míralo otra vez y vuelve a hacerlo si todavía es correcto.
