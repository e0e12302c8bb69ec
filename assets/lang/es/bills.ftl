# The desk in Spanish: bills, paying and sales.

# Ways to pay, amounts, cash that is given.
way-cash = Efectivo
way-card = Tarjeta
paid-in-cash = en efectivo
paid-by-card = con tarjeta
paid-by-way = con «{ $way }»
cash-given = Efectivo entregado
change-due = Entregado { $given }, cambio { $change }
refused-way = aquí no se paga con «{ $name }»; envía uno de { $ways }

# What is typed as an amount and is none, and sums that can’t be: the beginning of a sentence each.
amount-no-price = «{ $found }» no es un precio; escribe «8,50»
amount-not-above-zero = «{ $found }» no es un precio mayor que cero
amount-above-most = «{ $found }» no es un precio de hasta { $most }
amount-decimals = { $n ->
    [0] «{ $found }» no es un precio en { $currency } sin decimales
   *[other] «{ $found }» no es un precio en { $currency } con { $n } decimales como mucho
  }
amount-no-percent = «{ $found }» no es un porcentaje de 0 a 100; escribe «6,25»
money-price = el precio { $price } de «{ $id }» no está entre 0 y { $most }
money-too-large = la suma es mayor que { $most }
money-decimals = { $amount } tiene más decimales que su moneda
money-absurd = ninguna mesa cobra { $amount }
money-lines = la suma no es la de sus líneas
money-percent = una rebaja del { $percent } por ciento no está entre el 0 y el 100 por ciento
money-below-zero = { $amount } es menos que cero; una rebaja quita cero o más y deja cero o más
money-above-total = { $wish } es más que la suma de { $total }; una rebaja solo quita
money-too-little = se entregan { $given }, que son { $missing } menos de lo que se debe
money-reward-percent = una recompensa del { $percent } por ciento no está entre el 0 y el 100 por ciento
money-reward-sum = { $amount } no es una suma para piezas gratis; escribe una mayor que 0 y de hasta { $most }
reduce-how-much = Di cuánto se rebaja: a una suma redonda, un porcentaje o un importe.

# A bill and what is on it.
bill-title = Cuenta { $number }
bill-items = En la cuenta
bill-gifts = Regalos, envueltos aparte
bill-to-ticket = al ticket { $number }
bill-gift = Regalo
bill-no-gift = No es regalo
bill-ticket-off = quitar { $number } de la cuenta
bill-take-back = Devolución
bill-parts-to-tick = { $n ->
    [one] 1 pieza por marcar
   *[other] { $n } piezas por marcar
  }
bill-tell-cautions = decir los avisos al cliente
bill-say-sum = decir qué se cobra
bill-not-for-wearer = todavía no es para esta edad
bill-goods = Otros artículos
bill-goods-off = quitar { $words }
bill-empty = Aún no tiene nada: añade un ticket por su número o artículos con su precio.
bill-more = Añadir a la cuenta
bill-add-ticket = Añadir un ticket por su número
bill-add-goods = Añadir artículos sin compartimento
bill-add = Añadir
bill-goods-what = Qué es
bill-goods-example = Caja de regalo
bill-goods-price = Su precio
bill-no-such-ticket = A esta caja aún no ha llegado ningún ticket { $number }.
bill-ticket-not-open = El ticket { $number } ya no está abierto.
bill-tickets-alike = Varios tickets abiertos tienen el número { $number }: abre el que quieres y su cuenta.

# Its sum, and how it is paid.
bill-sum = La suma
bill-taken-off = Rebaja en artículos
bill-taken-off-because = Rebaja en artículos, { $reason }
bill-tax = Impuesto en total
bill-total = Total
bill-so-far = Pagado
bill-to-pay-out = A devolver
bill-left = Falta por pagar
bill-paid = Pagado.
bill-next-guest = Siguiente cliente
bill-pay-out = Devolver el dinero
bill-or-given = O el efectivo que se entrega
bill-reduce-goods = Rebajar algo en los artículos
bill-or-part = O una parte: una señal o la primera de dos formas

# Money that moved, and what was put right.
bill-payments = Pagos
bill-money = Dinero
bill-put-right = Corregido
bill-why-sale = pagado
bill-why-part = una parte
bill-why-paid-out = devuelto
bill-why-not-this-way = anulado: fue de otra forma
bill-why-this-way = corregido
bill-in-show = en la feria { $show }
bill-other-way = Fue de otra forma
bill-why = Por qué
bill-wrong-button = botón equivocado
bill-piece-back = Pieza { $number } devuelta.
bill-some-piece-back = Una pieza devuelta.
bill-part-back = Devuelto: { $name }.
bill-some-drop-back = Un colgante devuelto.
bill-some-goods-back = Artículos devueltos.
bill-way-put-right = Forma de pago corregida.
bill-because = Motivo: { $reason }.
bill-parts-home = Las piezas vuelven a estar en sus compartimentos.
bill-parts-gone = Las piezas ya no están.

# Refunds and exchanges.
back-of-bill = De la cuenta { $number }.
back-what = Qué se devuelve
back-whole-piece = La pieza entera, { $number }
back-parts = Sus piezas
back-parts-home = están otra vez en sus compartimentos: se pueden vender
back-parts-gone = están rotas o ya no están
back-reason-mind = cambió de idea
back-reason-broke = se rompió
back-reason-too-much = una línea de más
back-reason-size = talla equivocada
back-reason-present = un regalo que no gustó
back-pay-out = Devolver el dinero
back-not-yet = Todavía no: viene otra cosa en su lugar
refused-back = di qué se devuelve

# Finding a sale again.
sales-title = Ventas
sales-find = Buscar una venta pagada
sales-fill-in = Escribe lo que sepas de ella.
sales-number = Número
sales-sum = Suma
sales-day = Día
sales-home = Compartimento de un colgante
sales-show = Feria
sales-search = Buscar
sales-found = Encontradas
sales-none = No hay ninguna venta pagada así.
sales-newest = Se muestran las { $n } más recientes; di más de la venta para encontrar una anterior.
sales-in-show = feria { $show }
sales-open = Abrir
sales-no-show = «{ $found }» no es una feria; escribe su número, como 3.
sales-no-day = «{ $found }» no es un día; escríbelo como 2026-05-31.
sales-no-home = «{ $found }» no es un compartimento; escribe la letra de la bandeja y el número de el compartimento, como «B3».
