# The desk in Spanish: lots as they are written down, and spools that are promised.

lot-write = Anotar un lote
lot-part = Pieza
lot-name = Número que el proveedor da al lote
lot-day = Día en que llegó
lot-amount = Cuánto llegó: piezas, o el largo como 20m
lot-count = Cuántas piezas llegaron
lot-length = Largo que llegó, como 20m
lot-spools = En cuántos carretes, si va por largo
lot-broken = De eso, roto: piezas, o milímetros
lot-price = Lo que costó todo, en { $currency }
lot-paper = Informe de ensayo o declaración del proveedor
lot-paper-hint = Qué papel es y dónde lo guardas. Es lo que enseñas cuando alguien pregunta por este lote.
lot-put-away = Sumar lo que está entero al cajón, o a los carretes del banco
lot-keep = Guardar
lot-change = Cambiar { $lot }
lot-strike = Tachar este lote
lot-drawers-stay = El cajón y los carretes quedan como están; solo cambia lo que se dice del lote.
lot-did-write = lote { $lot } anotado
lot-did-change = lote { $lot } cambiado
lot-did-strike = lote { $lot } tachado
lot-no-part = Ninguna pieza se llama así; elige una de la lista. Las piezas están en parts.ron.
lot-no-name = Escribe cómo llama el proveedor al lote, con { $most } letras como mucho.
lot-no-amount = Escribe cuántas de «{ $part }» llegaron, desde 1.
lot-too-broken = Hay más roto de lo que llegó; escribe cuánto de eso estaba roto.
lot-no-spools = «{ $found }» no es un número de carretes; escribe uno de 1 a { $most }.
lot-no-paper = Di con { $most } letras como mucho qué papel es y dónde está.
lot-there = el lote { $lot } de esta pieza y este día ya está anotado; cámbialo allí
lot-none = no hay ningún lote «{ $lot }» de esa pieza y ese día
lot-no-workshop = en la carpeta del catálogo aún no hay parts.ron, que dice de qué están hechos los colgantes
lot-file-wrong = parts.ron tiene errores, que muestran las páginas del banco; corrígelos primero, no se escribió nada

cuts-promised = { $n ->
    [one] Queda fuera, porque una lista empezada corta de ahí: { $what }.
   *[other] Quedan fuera, porque listas empezadas cortan de ahí: { $what }.
  }
cuts-not-there = Ya no hay ningún carrete ni resto de { $length }: otra lista cortó de él, o los carretes se contaron de nuevo. No se marcó nada; aparta esta lista y planifica otra vez.
cuts-rest-gone = Lo que quedaba de este carrete, { $length }, se ha cortado después, así que la marca se queda. No se cambió nada.
