# The desk in Spanish: the bench, before and after a show.

tab-bench = Banco
bench-how-many = Cuántas hacer
bench-from-shows = { $n ->
    [0] Aún no hay ninguna feria cerrada: los recuentos del catálogo sirven de estimación.
    [one] Según la única feria hasta ahora. En ocho de cada diez ferias se pide tanto como abarca la barra clara.
   *[other] Según las { $n } ferias hasta ahora. En ocho de cada diez ferias se pide tanto como abarca la barra clara.
  }
bench-usual-show = Cualquier feria
bench-legend-usual = lo que se suele pedir
bench-legend-there = lo que hay
bench-legend-take = llevar tantas
bench-there = Hay
bench-make = Hacer
bench-usually = Se suelen pedir de { $from } a { $to }; todas vendidas: { $percent } %.
bench-basis-shows = { $n ->
    [one] Según 1 feria.
   *[other] Según { $n } ferias.
  }
bench-basis-sold-out = { $n ->
    [one] Agotada en su única feria: se pedían más.
   *[other] Según { $n } ferias, agotada en { $out }: se pedían más.
  }
bench-basis-sort = Como se venden otras de su clase.
bench-basis-guess = Estimado según tu recuento.
bench-how-reckoned = Se hacen tantas que una más costaría, si sobra, más de lo que ganaría. Todas las ferias cuentan igual; el tiempo y la temporada los pones tú.
bench-no-recipes = No se sabe cuánto cuestan las piezas: parts.ron, en la carpeta del catálogo, dice de qué están hechos los colgantes. Mientras tanto, la mitad del precio vale por el coste.
bench-no-numbers = No se puede calcular ningún número: un recuento del libro o del catálogo es mayor que el de cualquier feria.
bench-after = Después de las ferias
bench-restock = Qué hacer de nuevo
bench-close-out = El cierre de esta feria
bench-file-wrong = parts.ron tiene errores; el banco sigue sin él
bench-cuts = Cortar los carretes
after-net = Vendido, sin el impuesto
after-parts = Piezas que lleva
after-fee = Tasa del puesto
after-reward = Premio de quien invita
after-for-work = Queda para tu trabajo
after-work = Tus horas a tu tarifa
after-beyond = Más allá de tus horas
after-without-cost = { $n ->
    [one] 1 pieza no está en estos costes: parts.ron no tiene receta o lote para ella.
   *[other] { $n } piezas no están en estos costes: parts.ron no tiene receta o lote para ellas.
  }
after-todays-costs = Los costes son los de las recetas y los lotes de hoy. El viaje no está incluido.
after-by-sort = Lo vendido, por clase
after-sort = Clase
after-sold = Vendido
after-margin = Ganado
after-by-home = Lo vendido, por compartimento
cuts-from = Cortar de
cuts-length = Largo, como 18in o 45cm
cuts-count = Cuántos
cuts-hint = Lo que queda vacío no se corta. Lo que sobra de un carrete, si es bastante largo, se guarda.
cuts-plan = Planear los cortes
cuts-better = Buscar un plan mejor
cuts-searching = Buscando desde hace { $n } s. El plan de abajo ya es bueno.
cuts-searching-so-far = Buscando desde hace { $n } s: lo mejor hasta ahora está como mucho { $percent } % por encima del mejor plan posible.
cuts-stop = Parar y mostrar lo mejor hasta ahora
cuts-list = Cortar y marcar
cuts-spool = De { $length }:
cuts-times = { $n } × { $length }
cuts-stays = quedan { $length }
cuts-lost = se pierden { $length }
cuts-missing = Los carretes no alcanzan. Faltan: { $what }.
cuts-sum = Tomado de los carretes: { $drawn }, de ello perdido: { $lost }.
cuts-proven = Ningún plan pierde menos.
cuts-gap = Como mucho { $percent } % por encima del mejor plan posible.
cuts-no-length = «{ $found }» no es un largo; escribe 18in o 45cm.
cuts-no-count = No se puede leer cuántos de { $length } hacen falta; escribe un número entero hasta 10000.
cuts-impossible = De «{ $part }» no se puede cortar eso; elige lo que está en carretes, y largos mayores que cero.
backup-title = Poner a salvo
backup-about = La copia contiene todo lo que la caja ha anotado, se vuelve a leer y queda junto al libro. Guárdala también en otro lugar: una memoria, otro ordenador. Contiene claves, así que no se la des a nadie.
backup-do = Copiar ahora
backup-save = Guardar en otro lugar
backup-none = Aún no hay ninguna copia del libro.
backup-old = La última copia del libro es del { $day }.
backup-failed = No se pudo copiar el libro, y no se guardó ninguna copia; mira cuánto espacio queda en el disco.
backup-restore = Una copia que está en otro sitio toma el lugar del libro con chatelaine restore --from ARCHIVO mientras la caja no está en marcha. Lo que reemplaza se guarda en una carpeta al lado.
bench-nothing-to-make = No hace falta hacer nada: hay bastante de todo.
bench-enough = Hay bastante
