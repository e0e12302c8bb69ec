# The desk in Spanish: what is made, bought, packed and planned, and the year.

act-bench = El trabajo en el banco
bench-no-form = Este formulario no está completo. Abre la página de nuevo; no se anotó nada.
bench-off-list = Quitar
cuts-keep = Guardar como lista para marcar
cuts-kept = Listas en curso
cuts-done = { $n } de { $all } cortadas
cuts-changed = Los carretes han cambiado desde este plan; planea los cortes otra vez. No se guardó nada.
cuts-follow = Marca cada carrete cuando esté cortado. Con lo que queda en él empieza el próximo plan.
cuts-tick = Cortado, línea { $n }
cuts-away = Guardar aparte esta lista

parts-title = Piezas sueltas y compras
parts-about = { $n ->
    [0] No hay nada que hacer, así que no hacen falta piezas sueltas.
    [one] Lo que toma de los cajones 1 pieza por hacer.
   *[other] Lo que toman de los cajones { $n } piezas por hacer.
  }
parts-buy = Para comprar
parts-enough = En los cajones hay bastante de todo.
parts-short = Falta
parts-price = Precio
parts-lots = { $n ->
    [one] 1 lote, { $amount } en total.
   *[other] { $n } lotes, { $amount } en total.
  }
parts-no-offer = En parts.ron no se ofrece ningún lote.
parts-stops = Sin esto se paran: { $what }.
parts-in-all = En total
parts-drawers = Lo que pide la tanda
parts-needed = Pide
parts-without = No está incluido, porque parts.ron no tiene receta: { $what }.

made-title = Hecho y revisado
made-about = Anota lo que hiciste, de qué lotes, y lo que revisaste. Así la caja sabrá después qué piezas vendidas pueden tener un lote malo.
made-what = Qué se hizo
made-put-in = Ponerlas en su casilla: la cuenta crece en tantas
made-checks = Revisado en cada pieza
made-check-loops_closed = Las argollas y los anillos están cerrados
made-check-wire_trimmed = Los extremos del alambre están cortados y doblados hacia dentro
made-check-corks_glued = Los corchos están pegados, o no los hay
made-check-end_rings = Los anillos de los extremos aguantan
made-check-pull = Se tiró con la mano y no se soltó nada
made-lots = Qué lotes llevan
made-lots-hint = Una pieza suelta cuyos lotes no dices cuenta como de cualquiera.
made-note = Nota
made-keep = Anotar
made-before = Lo que se hizo antes
made-of-lots = Lotes: { $lots }.
made-all-checked = Se revisó todo.
made-not-checked = Sin revisar: { $what }.

lots-title = Lotes y retirada
lots-find = Qué piezas llevan el lote
lots-look = Buscar
lots-none = Ningún lote se llama «{ $found }» en parts.ron; escríbelo como está en la lista de abajo
lots-where = Dónde puede estar el lote { $lot }
lots-used-nowhere = Ninguna receta usa una pieza de este lote.
lots-used-in = Sus piezas van en: { $what }.
lots-take-out = Puede estar todavía en la mesa; saca estas y míralas:
lots-sold = { $n ->
    [0] Ninguna pieza vendida puede llevarlo.
    [one] 1 pieza vendida puede llevarlo.
   *[other] { $n } piezas vendidas pueden llevarlo.
  }
lots-shown = Piezas vendidas { $from } a { $to } de { $all }, las más antiguas primero.
lots-by-show = Por feria: { $what }.
lots-by-state = Dónde están: { $what }.
lots-earlier = Anteriores
lots-later = Posteriores
lots-all-file = Todas como tabla
lots-worst = Las piezas de una casilla no se distinguen; por eso se nombra cada una hasta que se acabaron todas. Lo que no está anotado cuenta como lo peor.
lots-bought = Lo que se compró
lots-broken = { $all }, de ello roto: { $broken }
lots-paper = Papel: { $paper }.
lots-no-paper = No hay informe de ensayo ni declaración anotados.
lots-about = Los lotes están en parts.ron. Guarda el informe o la declaración del proveedor donde lo dice la lista.
lots-children = Piezas para niños: qué hay que preguntar
lots-children-about = Las reglas son distintas en cada país y cambian. Esta lista dice qué preguntar, y no qué vale para ti.
lots-children-age = ¿Para qué edad está pensada, y para cuál la tomarían otros?
lots-children-test = ¿Qué ensayos necesita una pieza para esa edad (piezas pequeñas, metales, tracción), y qué laboratorio puede hacerlos?
lots-children-certificate = ¿Quién tiene que escribir qué certificado o declaración, y cuánto tiempo se guarda?
lots-children-label = ¿Qué etiqueta de seguimiento va en la pieza o en su tarjeta (quién la hizo, lugar, día o tanda)?
lots-children-small-parts = ¿Qué palabras sobre piezas pequeñas van en la tarjeta y junto a la mesa?
lots-children-records = ¿Qué lotes, revisiones y ventas hay que poder encontrar, y durante cuántos años?
lots-children-who = Pregunta a la autoridad de seguridad de productos donde vendes, o a un laboratorio acreditado. Hasta que lo digan, no vendas nada como hecho para niños.

packing-title = Equipaje
packing-about = { $n ->
    [0] Todo lo de la lista está guardado.
    [one] Queda 1 cosa por guardar.
   *[other] Quedan { $n } cosas por guardar.
  }
packing-again = Próxima feria: sacar todo
packing-what = Qué más
packing-spare = Es de repuesto
packing-add = Añadir
packing-usual = Añadir lo de costumbre
packing-pack = Guardado: { $what }
packing-is-spare = repuesto
packing-forgotten = { $n ->
    [one] olvidado una vez
   *[other] olvidado { $n } veces
  }
packing-forgot = Se me olvidó
packing-nothing = escribe qué hay que guardar
packing-usual-chain = Cadena en carretes, para largos cortados en la mesa
packing-usual-tools = Alicates, cortadores, calibre y regla
packing-usual-clasps = Cierres y anillos de repuesto
packing-usual-drops = Dijes de repuesto en sus cajas
packing-usual-bases = Cadenas y brazaletes de repuesto
packing-usual-float = Cambio en billetes y monedas
packing-usual-tablets = Tabletas y el ordenador
packing-usual-chargers = Cargadores, batería, alargador
packing-usual-reader = Lector de tarjetas, cargado
packing-usual-lights = Luces y espejo
packing-usual-paper = Papel de impresora, bolsas, tarjetas
packing-usual-cautions = Advertencias impresas y permiso

plans-title = Próximas ferias y encargos
plans-shows = Próximas ferias
plans-no-shows = No hay ninguna feria planeada.
plans-day = Día
plans-place = Lugar
plans-fee = Precio del puesto
plans-deadline = Plazo
plans-permit = Número del permiso
plans-note = Nota
plans-add-show = Añadir la feria
plans-passed = ya pasó
plans-is-fee = Puesto: { $fee }.
plans-is-deadline = Plazo: { $day }.
plans-is-permit = Permiso: { $permit }.
plans-no-place = escribe dónde es la feria
plans-no-fee = «{ $found }» no es un precio de puesto; escribe un importe desde 0, como 45,00
plans-orders = Encargos
plans-no-orders = No hay nada encargado.
plans-due = Para el día
plans-agreed = Lo acordado
plans-number = Número
plans-number-hint = Un número por el que sabes quién encargó, y nada más: ni nombre ni dirección.
plans-add-order = Añadir el encargo
plans-done = hecho
plans-late = con retraso
plans-is-done = Hecho
plans-nothing-agreed = escribe lo acordado
plans-no-number = «{ $found }» no es un número; escribe solo cifras, 15 como mucho, y ningún nombre

year-title = El año
year-which = Año
year-stock-on = Existencias al final del
year-show = Mostrar
year-no-year = «{ $found }» no es un año; escribe cuatro cifras, como 2026
year-no-day = «{ $found }» no es un día; escribe año, mes y día, como 2026-12-31
year-nothing = En { $year } no se vendió nada.
year-about = Según el calendario de este ordenador. Lo devuelto o corregido cuenta en el trimestre en que se hizo. Las ferias de práctica no están. Qué se declara, y dónde, lo dice tu asesor fiscal.
year-by-closing = De algunas ferias una versión anterior guardó solo las sumas: cuentan el día en que se cerró la feria.
year-set-apart = No está en estas sumas, porque no se pudo sumar (feria, número, importe): { $what }
year-tax = Impuesto por trimestre, lugar y tipo
year-quarter = Trimestre
year-q = T{ $n }
year-net = Vendido, sin impuesto
year-the-tax = Impuesto
year-no-place = lugar sin decir
year-rate = { $percent } %
year-rate-unknown = tipo sin guardar
year-payments = Cobrado, por forma de pago
year-taken = Cobrado menos devuelto
year-reductions = Descuentos y correcciones
year-amount = Importe
year-off-reductions = Descuentos en total
year-off-by_hand = De ellos a mano
year-off-taken_back = Devuelto, con impuesto
year-off-tax_taken_back = Impuesto en lo devuelto
year-off-paid_out = Pagado de vuelta
year-off-cash_rounding = Redondeo del efectivo
year-off-deposits = Pagado por lo que aún no se vendió
year-stock = Existencias a coste
year-stock-unknown = Lo que había al final del { $day } no se sabe: este libro aún no guardaba las cuentas.
year-stock-worth = Al final del { $day }, las piezas sueltas de todo lo terminado habían costado { $worth }.
year-stock-no-cost = Sin { $n } piezas cuyo coste no se sabe.
year-stock-about = Según todos los lotes comprados hasta ahora. Tus horas, y las piezas sueltas que siguen en los cajones, no están.
year-stock-since = Las cuentas se conocen desde el { $day }.

act-restore = Poner una copia en el lugar del libro
restore-this = Poner esta copia en el lugar del libro
restore-about = Cuando la caja arranque la próxima vez, todo estará como en esta copia: tickets, sumas, cuentas, PIN y tabletas emparejadas. Lo anotado desde entonces se guarda en una carpeta al lado, pero ya no está en ninguna página ni en ninguna suma.
restore-do = En el próximo arranque
restore-waits = Cuando la caja arranque la próxima vez, { $name } toma el lugar del libro. Lo que se anote hasta entonces no estará en él.
restore-not = Al final no
restore-failed = la copia «{ $name }» no está entera o es de otra versión, así que no puede tomar el lugar del libro; elige otra

hand-over-title = Tarjeta de la pieza { $number }
hand-over-piece = Pieza { $number }
card-not-known = No se sabe de qué está hecho.
card-keep = Guarda esta tarjeta: por su número el taller encuentra con qué se hizo la pieza.
paper-link-card = Tarjeta de la pieza
