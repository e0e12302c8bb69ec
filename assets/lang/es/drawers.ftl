# The desk in Spanish: drawers, spools, and what is cut at the table.

drawers-title = Cajones y carretes
drawers-about = Lo que hay, según lo contado, menos lo que desde entonces cortó una lista o se vendió en otro largo. Lo que se hace para las bandejas cuenta aquí solo cuando tú lo cuentas.
drawers-pieces = { $n ->
    [one] 1 pieza
   *[other] { $n } piezas
  }
drawers-no-spools = no queda ningún carrete
drawers-spools = { $each }; { $all } en total
part-new = Anotar una pieza
part-name = Cómo se llama la pieza
part-measure = Cómo se cuenta
part-by-piece = por pieza, en un cajón
part-by-length = por largo, en carretes
part-there-now = Lo que hay ahora: piezas, o cada carrete como 10m; 735cm
part-offer-amount = Lo que un proveedor vende de una vez: piezas, o el largo
part-offer-price = Lo que cuesta eso, en { $currency }
part-kerf = Lo que se lleva cada corte, como 4mm, si va por largo
part-keep-from = Desde qué largo guardas un resto, como 35cm
part-add = Añadir lo que llegó
part-add-pieces = Cuántas piezas llegaron
part-add-spools = Lo que llegó, cada carrete como 10m; 10m
part-add-do = Añadir
part-count = Contar de nuevo
part-count-pieces = Cuántas piezas hay en el cajón
part-count-spools = Lo que hay, cada carrete y cada resto como 10m; 735cm
part-strike = Tachar esta pieza
part-less-than-file = parts.ron dice otra cifra; las listas y las ventas han tomado el resto desde entonces.
part-did-new = pieza { $part } anotada
part-did-count = { $part } contado
part-did-add = { $part } añadido
part-did-strike = pieza { $part } tachada
part-no-name = Escribe cómo se llama la pieza, en { $most } letras como mucho.
part-no-keep-from = Di desde qué largo guardas un resto, como 35cm.
part-there = ya hay una pieza «{ $part }»
part-none = no hay ninguna pieza «{ $part }»
part-used = «{ $part }» está en recetas ({ $recipes }) y lotes ({ $lots }); mientras sea así, se queda
part-used-since = de lo que eso trajo de «{ $part }», algo se cortó o se vendió después; no se deshizo nada. Cuenta más bien lo que hay
table-cuts-title = Cortado en la mesa
table-cuts-about = Una cadena de otro largo que las que están listas sale de su carrete al pagarse, y su cierre y sus anillas de sus cajones, según la receta. El trozo más corto que alcanza cuenta como cortado; si cortaste otro, cuenta de nuevo. Una joya que vuelve no devuelve nada de eso.
table-cuts-off = { $part }: { $cut } de { $from };
table-cuts-missing = Según la cuenta no había bastante de «{ $part }»; no se quitó nada. Cuenta lo que hay.
table-cuts-on-ticket = Cortado a medida en la mesa: al pagarse sale del carrete, y no falta ninguna de las cadenas listas. Si se corta y luego queda en nada, cuenta el carrete.
table-cuts-taken-back = Su cadena se cortó a medida: nada de ella vuelve al carrete ni a las cadenas listas.
history-workbook = largo tomado del carrete
begin-parts = Decir de qué están hechas las cosas
begin-hour = Cuánto vale una hora de tu trabajo, en { $currency }
begin-step = En qué pasos se leen bien los precios en una etiqueta pequeña, en { $currency }
begin-parts-do = Empezar
begin-parts-about = Así empieza parts.ron en la carpeta del catálogo. Las piezas se anotan aquí; cuáles lleva un colgante o una base está allí, en recipes. Lo que no se pregunta es allí una suposición y lo dice.
begin-did = parts.ron empezado
begin-nothing = Nada no es un importe; escribe cuánto vale.
