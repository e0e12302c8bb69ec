# La caja en español: papel para la mesa, y el sitio de una pieza perdida.

# En el papel.
labels-title = Papel para { $table }
labels-marks = Etiquetas de precio
labels-tags = Etiquetas de cadenas y brazaletes
labels-set-up = Montaje
labels-prices = Precios
labels-bases = Cadenas y brazaletes
labels-lengths = { $from_cm } a { $to_cm } cm · { $from_in } a { $to_in } in
labels-tax-added = Más { $percent } % de impuesto
labels-tax-included = Con { $percent } % de impuesto incluido
labels-foot = { $title }, hoja { $n } de { $all }. Corta por las líneas; dobla por las rayas, o corta también ahí.
labels-ruler = { $mm } mm si se imprime a tamaño real.
labels-map-hint = como está delante de los clientes
labels-lay = { $n } × { $name } · { $price }
labels-first-desk = La caja está encendida y alguien ha entrado
labels-first-tablets = Las tabletas están cargadas y muestran esta mesa
labels-first-float = El cambio está contado
labels-first-cautions = La tarjeta de precauciones está junto a las bandejas
labels-first-put-back = El código para las piezas perdidas está al alcance de quienes ayudan
labels-code-hint = Para quienes ayudan: apunta aquí con la cámara del teléfono y luego toca la imagen de la pieza que has encontrado.

# En las páginas de la caja.
labels-page = Papel para la mesa
labels-page-hint = Etiquetas de precio para los dos bordes de cada casilla, etiquetas, planos, listas: en PDF para imprimir y cortar.
labels-what = Qué
labels-all = Todo
labels-maps = Planos de las bandejas
labels-code = Código para las piezas perdidas
labels-sheet = Hojas
labels-columns = Etiquetas una al lado de otra
labels-rows = Etiquetas una debajo de otra
labels-margin-above = Margen arriba y abajo, en mm
labels-margin-beside = Margen a izquierda y derecha, en mm
labels-grid-hint = Así, una etiqueta mide { $width } × { $height } mm, más o menos como el borde de una casilla. Con un número par una debajo de otra, las dos de una casilla quedan cabeza con cabeza: dóblalas sobre un borde o sepáralas.
labels-tray = Qué bandeja
labels-every-tray = Todas las bandejas
labels-language = Idioma
labels-how-much = Cuánto
labels-changed-only = Solo lo nuevo desde la última impresión
labels-changed = { $n ->
    [0] Todas las etiquetas están como en la última impresión.
    [one] 1 etiqueta es nueva desde la última impresión: { $homes }
   *[other] { $n } etiquetas son nuevas desde la última impresión: { $homes }
}
labels-never = Todavía no se ha impreso ninguna etiqueta.
labels-make = Crear el PDF
labels-done = Ya está impreso
labels-done-hint = Imprime a tamaño real (100 %), sin ajustar a la página. Cuando las etiquetas estén cortadas, dilo aquí: la próxima vez solo salen las que dicen otra cosa.
labels-noted = Anotado. Solo es nuevo lo que cambie a partir de ahora.
labels-stale = La mesa ha cambiado desde que se hizo esta página. Crea el PDF otra vez antes de decir que está impreso.
labels-nothing = nada de eso está en la mesa, o nada de eso es nuevo
labels-grid-shape = una cuadrícula tiene columnas y filas, como 4 y 14
labels-grid-margin = un margen es un número de milímetros de 0 a 60
labels-grid-count = caben de 1 a 10 etiquetas una al lado de otra y de 1 a 28 una debajo de otra
labels-grid-small = las etiquetas de { $width } × { $height } mm son demasiado pequeñas para leerlas; pon menos, para que midan al menos 20 × 10 mm
labels-not-noted = no se pudo anotar lo que se imprimió: { $why }
put-back-none = Todavía no hay nada en la mesa.
put-back-at = { $name } va en { $home }.
