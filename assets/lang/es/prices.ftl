# The desk in Spanish: what things cost and earn.

prices-title = Costes y precios
prices-travel = Viaje, ida y vuelta
prices-pieces = Piezas que esperas vender, bases y colgantes contados uno a uno
prices-points = Cuántos precios distintos como mucho
prices-of = Qué haría otro precio: de
prices-to = El otro precio, en { $currency }
prices-reckon = Calcular
prices-change = Qué haría otro precio
prices-earns = Uno gana entonces { $then } en vez de { $now }.
prices-same = { $n ->
    [one] Si entonces se vende 1 en una feria, gana lo que ahora ganan { $sold }: { $earned }.
   *[other] Si entonces se venden { $n } en una feria, ganan lo que ahora ganan { $sold }: { $earned }.
  }
prices-never = Por muchos que se vendan, nunca ganan lo que se gana ahora: { $earned }.
prices-at-a-loss = Tal como está, cada uno pierde { $loss } una vez contada su parte del puesto.
prices-by-price = Por precio
prices-suggested = { $n ->
    [one] Según los costes bastaría un precio: { $points }.
   *[other] Según los costes bastarían estos pocos precios: { $points }.
  }
prices-even = { $n ->
    [one] 1 pieza gana el puesto de { $stall }, con { $earned } por pieza, tal como vendes.
   *[other] { $n } piezas ganan el puesto de { $stall }, con { $earned } por pieza, tal como vendes.
  }
prices-never-even = Ningún número de piezas gana el puesto de { $stall }: cuestan más de lo que traen.
prices-price = Precio
prices-at = { $n ->
    [one] 1 clase; { $sold } vendidas por feria
   *[other] { $n } clases; { $sold } vendidas por feria
  }
prices-margin = Gana uno
prices-least = el que menos gana: { $amount }
prices-each = Pieza por pieza
prices-about = Los costes son las piezas según tus lotes, los minutos a tu tarifa y la parte del puesto. Hay un «?» donde parts.ron no tiene receta o lote.
prices-costs = Precio { $price }, cuesta { $cost }.
prices-point = Según su coste: { $point }
prices-longest = En su largo mayor cuesta { $cost }, al mismo precio.
prices-no-pieces = «{ $found }» no es un número de piezas; escribe un número entero hasta 100000.
prices-no-points = «{ $found }» no es un número de precios; escribe uno de 1 a { $most }.
prices-no-price = { $why }
prices-no-cost = No se sabe cuánto cuesta «{ $name }»: parts.ron no tiene receta o lote para ello.
