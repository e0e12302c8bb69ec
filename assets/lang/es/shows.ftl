# The desk in Spanish: the show, practice, trays.

# What a show is.
show-title = Feria
show-kind-fair = mercadillo
show-kind-open_house = puertas abiertas
show-kind-home_party = fiesta en casa
show-kind-childrens_party = fiesta infantil
show-kind-practice = práctica
show-name = Feria { $show }
show-name-at = Feria { $show }, { $place }
show-practice = Práctica
show-no-tax = aquí sin impuesto
show-tax = aquí { $percent } % de impuesto
show-float = fondo { $amount }
show-fee = tasa del puesto { $amount }
show-host = anfitriona: { $host }
show-since = En marcha desde { $when }
show-what-it-is = Qué es
show-change = Cambiar
show-which = ¿Qué feria es esta?
show-which-hint = Lugar, impuesto, tasa y fondo le pertenecen entonces. También funciona sin ello, con el impuesto propio de la mesa.
show-close = Cerrar la feria
show-practise = Practicar
show-earlier = Ferias anteriores

# Telling what it is.
about-title = ¿Qué feria es?
about-ask = ¿Qué es la feria { $show }?
about-kind = Qué tipo de evento
about-not-told = sin decir
about-place = Dónde está la mesa
about-place-hint = p. ej. calle del Molino, sala 2
about-tax = Impuesto del lugar, en porcentaje
about-own-none = vacío: la mesa no muestra impuesto
about-own-added = aparte de los precios marcados; vacío: { $percent } %, como lo tiene la mesa
about-own-included = incluido en los precios marcados; vacío: { $percent } %, como lo tiene la mesa
about-on-top = aparte de los precios marcados
about-contained = incluido en ellos
about-float = Efectivo en la caja antes de la primera venta ({ $currency })
about-float-hint = el fondo de caja
about-fee = Tasa del puesto ({ $currency })
about-fee-hint = lo que cuesta el sitio
about-host = Anfitriona
about-host-hint = una etiqueta para la recompensa, p. ej. anfitriona de la calle del Molino; no hace falta un nombre
about-keep = Guardar esto
about-hint = Lo que dejes vacío queda sin decir. Todo se puede cambiar mientras dura la feria; cada cambio se anota.
typed-no-fee = «{ $found }» no es una tasa; escribe un importe de hasta { $most }, como { $like }.
typed-no-float = «{ $found }» no es un fondo de caja; escribe un importe de hasta { $most }, como { $like }.
typed-no-sum = «{ $found }» no es una suma de efectivo; escribe un importe de hasta { $most }, como { $like }.
typed-no-tax = «{ $found }» no es un impuesto; escribe un porcentaje de 0 a 100, como { $like }.
typed-no-count = «{ $found }» no es una cantidad de { $piece }; escribe un número entero.

# Counting the cash and closing.
close-title = ¿Cerrar la feria?
close-ask = ¿Cerrar la feria { $show }?
close-open = { $n ->
    [0] No hay ningún ticket abierto.
    [one] Queda 1 ticket abierto; se descarta, y sus colgantes vuelven a estar libres.
   *[other] Quedan { $n } tickets abiertos; se descartan, y sus colgantes vuelven a estar libres.
  }
close-next = La siguiente feria empieza enseguida, y sus números comienzan de nuevo.
close-cash = El efectivo
cash-before = En la caja antes de la primera venta
cash-moved = Entró, menos lo que salió
cash-should-be = Debería haber
close-counted = Contado en la caja ({ $currency })
close-counted-hint = Vacío: nadie contó, o billete a billete abajo.
close-pieces = Contar billetes y monedas
close-not-alike = Billete a billete son { $pieces }, y la suma dice { $sum }; cuenta otra vez o deja vacía una de las dos.
refused-not-running = la feria { $show } no es la que está en marcha

# A show’s sums.
sums = Sumas
sums-rung-up = Tickets cobrados
sums-let-go = Descartados
sums-let-go-closing = { $n }, { $closing } de ellos al cerrar
sums-cash = En efectivo
sums-card = Con tarjeta
sums-way = Con «{ $way }»
sums-paid-out = De esto, devuelto
sums-owing = Pagado por lo aún no vendido
sums-tax = Impuesto incluido en ello
sums-rate = { $rate } % sobre { $net }
sums-discounts = Descuentos y rebajas
sums-back = { $n ->
    [one] Devuelto, 1 vez
   *[other] Devuelto, { $n } veces
  }
sums-rounding = Redondeo del efectivo
sums-taken = Cobrado
sums-late = De esto, con retraso, de ferias anteriores
sums-late-tickets = { $n ->
    [one] 1 ticket, { $amount }
   *[other] { $n } tickets, { $amount }
  }
sums-kept-open = Siguen abiertos, con una parte pagada
sums-let-go-earlier = Descartados, de ferias anteriores
sums-set-apart = Por el ticket { $number } se cobraron { $charged }, que no están en ninguna de estas sumas: es otra moneda, o ninguna mesa cobra tanto.
sums-too-large = demasiado grande para sumarlo
cash-title = Efectivo
cash-counted = Contado
cash-agrees = Cuadra
cash-missing = Falta
cash-too-much = Sobra
cash-difference = Diferencia
cash-not-counted = sin contar
earned = Lo que queda
earned-title = Tras impuesto, tasa y recompensa
earned-sold = Vendido, sin el impuesto
earned-fee = Tasa del puesto
earned-reward = Recompensa de la anfitriona
earned-pieces-up-to = { $n ->
    [one] 1 pieza gratis, de hasta { $amount }
   *[other] { $n } piezas gratis, de hasta { $amount } cada una
  }
earned-left = Queda
earned-profit = Ganancia, antes de tus horas
earned-profit-hint = Las piezas cuentan según las recetas y los lotes de hoy. Tus horas y el viaje no están incluidos.
earned-hint = No se sabe lo que costaron las piezas, o no todas, así que esto no es la ganancia.
sold-title = Vendido, por compartimento
sold = Vendido
sold-by-sort-title = Vendido, por tipo
sold-by-sort = Vendido por tipo
sold-what = Qué
sold-home = Compartimento
sold-part = Pieza
sold-back = Devuelto
sold-left = Queda
sold-marked = Según precio
sold-sort = Tipo
sold-sort-base = bases
sold-sort-Charm = dijes
sold-sort-Bead = cuentas
sold-sort-Vial = frasquitos
sold-sort-Locket = guardapelos
sold-sort-Key = llaves
sold-sort-Crystal = cristales
sold-sort-Tassel = borlas
sold-sort-Found = hallazgos

# A closed show.
closed-title = Cierre de la feria { $show }
closed-title-at = Cierre de la feria { $show }, { $place }
closed-practice = Cierre de la práctica
closed-when = { $table }, cerrada { $when }
closed-came-late = Llegados tarde
closed-came-after = Llegados tras el cierre
closed-came-after-hint = No están en las sumas de arriba. Cada uno cuenta en la feria en la que se cobró.
closed-came-to = { $state } en la feria { $show }
closed-left = Todo lo que quedó
closed-print = Imprimir
closed-to-running = A la feria en marcha
files = Archivos
files-hint = Tablas para una hoja de cálculo: importes con punto, como 8.50, o con coma, como 8,50.
files-lines = Lo vendido, por compartimento
files-tickets = Todos los tickets
files-money = El dinero
files-tax = El impuesto por tipo
files-left = Lo que queda
files-all = Todo junto (JSON)
refused-nothing-called = en esta caja no hay nada llamado «{ $name }»
refused-not-closed = la feria { $show } no se ha cerrado en esta caja
refused-no-show = en esta caja no hay ninguna feria { $show }
refused-no-file = no se pudo hacer el archivo

# Practice.
practice-ask = ¿Practicar?
practice-ask-text = Todo funciona como siempre, en la caja y en las tabletas, y nada cuenta: no se gastan existencias ni números, y en cada pantalla pone «Práctica». Mientras dure no se puede vender nada de verdad.
practice-open-wait = { $n ->
    [one] El ticket abierto espera hasta que termine la práctica.
   *[other] Los { $n } tickets abiertos esperan hasta que termine la práctica.
  }
practice-begin = Empezar la práctica
practice-end-text = Todo lo hecho desde que empezó la práctica se descarta al terminar; después todo queda como antes.
practice-end = Terminar la práctica
