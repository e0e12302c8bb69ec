# The desk in Spanish: a tray by one photo.

photo-busy = Ahora mismo se trabaja en otra foto. Envía la tuya de nuevo en un momento.
tray-photo-title = La bandeja { $letter } con una foto
tray-photo-how = Fotografía la bandeja justo desde arriba, con sus cuatro esquinas interiores en la imagen, con luz pareja y sin flash. Una sola clase en cada compartimento, pocas piezas y ninguna encima de otra.
tray-photo-take = Hacer la foto ahora
tray-photo-choose = O elegir una que ya existe
tray-photo-send = Leer la foto
tray-photo-stays-here = La foto se queda en este ordenador, sin el lugar donde se hizo, hasta que sus imágenes estén en la mesa o la tires.
tray-photo-begun = Fotos empezadas
tray-photo-of = Seguir con la foto de { $time }
tray-photo-none = Elige primero una foto.
tray-photo-gone = esta foto ya no está aquí; hazla otra vez
tray-photo-no-corners = Las cuatro esquinas no forman una bandeja: ponlas una tras otra a su alrededor.
tray-photo-no-grid = Una foto muestra como mucho 30 filas y columnas, y 300 compartimentos. Divide la bandeja en dos.
tray-photo-no-width = Escribe el ancho interior de la bandeja en milímetros, de 40 a 2000.
tray-photo-no-number = Una esquina está entre el 0 y el 100 por ciento de la foto.
tray-photo-corners = Las esquinas de la bandeja { $letter }
tray-photo-found = Se han encontrado las esquinas. Arrástralas donde no estén bien.
tray-photo-not-found = No se han encontrado las esquinas. Arrastra cada una a una esquina interior de la bandeja.
tray-photo-turn = Girar un cuarto
tray-photo-turn-hint = hasta que { $home } esté en su compartimento
tray-photo-width = Ancho interior de la bandeja, de izquierda a derecha, en milímetros
tray-photo-cut = Recortarlo todo
tray-photo-by-number = Las esquinas en números
tray-photo-across = Esquina { $n }: desde la izquierda, en por ciento
tray-photo-down = Esquina { $n }: desde arriba, en por ciento
tray-photo-seen = La foto con las paredes de la bandeja dibujadas encima
tray-photo-throw-away = Tirar esta foto
tray-photo-pieces = Lo que muestra la bandeja { $letter }
tray-photo-tally = { $cut } recortadas, { $tiles } como tarjetas.
tray-photo-nothing-seen = No se ha visto nada en ningún compartimento. Pon las esquinas de nuevo o haz otra foto.
tray-photo-take-all = Tomarlas todas así
tray-photo-mend-hint = Toca la que no esté bien.
tray-photo-corners-again = Poner las esquinas de nuevo
tray-photo-stays = se queda como está
tray-photo-empty = nada a la vista
tray-photo-tile = como tarjeta
tray-photo-whole = compartimento entero
tray-photo-mix = { $n ->
    [0] un surtido, nada separado
   *[other] un surtido, { $n } separados
  }
tray-photo-sure = seguro
tray-photo-unsure = no es seguro
tray-photo-mend = La imagen de { $home }
tray-photo-mend-head = su imagen
tray-photo-strokes = Pasa el dedo por lo que falta para conservarlo, o por lo que sobra para quitarlo.
tray-photo-strokes-do = Lo que hace un trazo
tray-photo-keep = Conservar
tray-photo-drop = Quitar
tray-photo-stroke-back = Borrar el último trazo
tray-photo-whole-seen = El compartimento como está en la foto, para pasar el dedo
tray-photo-cut-again = Recortar de nuevo
tray-photo-as-cut = Recortada
tray-photo-as-tile = Como tarjeta
tray-photo-as-whole = Compartimento entero
tray-photo-as-mix = Como surtido
tray-photo-as-nothing = Ninguna imagen de aquí
tray-photo-nothing-left = No queda nada. Borra un trazo o muéstrala como tarjeta.
tray-photo-no-strokes = Pasa primero el dedo por la imagen.
tray-photo-prices = Precios de la bandeja { $letter }
tray-photo-priced = { $n } de { $of } tienen precio.
tray-photo-has-price = tiene precio
tray-photo-all-priced = { $n ->
    [0] Aquí nada necesita precio.
   *[other] Las { $n } tienen precio.
  }
tray-photo-same-price = Otra vez { $price }
tray-photo-leave-out = Dejar { $home } vacío
tray-photo-to-pieces = A las imágenes
tray-photo-lay = { $n ->
    [one] Ponerla en la mesa
   *[other] Poner las { $n } en la mesa
  }
table-did-photo = { $n ->
    [one] 1 imagen de una foto de la bandeja { $letter }
   *[other] { $n } imágenes de una foto de la bandeja { $letter }
  }
named-name = { $sort } { $colour }
named-name-sized = { $sort } { $colour } { $size }
named-mix = Colgantes variados
named-gender-Charm = m
named-gender-Bead = f
named-gender-Vial = m
named-gender-Locket = m
named-gender-Key = f
named-gender-Crystal = m
named-gender-Tassel = f
named-gender-Found = m
named-small = { $gender ->
    [f] pequeña
    [n] pequeño
   *[m] pequeño
  }
named-large = { $gender ->
    [f] grande
    [n] grande
   *[m] grande
  }
named-colour-Golden = { $gender ->
    [f] dorada
    [n] dorado
   *[m] dorado
  }
named-colour-Silvery = { $gender ->
    [f] plateada
    [n] plateado
   *[m] plateado
  }
named-colour-Coppery = { $gender ->
    [f] cobriza
    [n] cobrizo
   *[m] cobrizo
  }
named-colour-Clear = { $gender ->
    [f] transparente
    [n] transparente
   *[m] transparente
  }
named-colour-White = { $gender ->
    [f] blanca
    [n] blanco
   *[m] blanco
  }
named-colour-Black = { $gender ->
    [f] negra
    [n] negro
   *[m] negro
  }
named-colour-Red = { $gender ->
    [f] roja
    [n] rojo
   *[m] rojo
  }
named-colour-Pink = { $gender ->
    [f] rosa
    [n] rosa
   *[m] rosa
  }
named-colour-Orange = { $gender ->
    [f] naranja
    [n] naranja
   *[m] naranja
  }
named-colour-Yellow = { $gender ->
    [f] amarilla
    [n] amarillo
   *[m] amarillo
  }
named-colour-Green = { $gender ->
    [f] verde
    [n] verde
   *[m] verde
  }
named-colour-Blue = { $gender ->
    [f] azul
    [n] azul
   *[m] azul
  }
named-colour-Violet = { $gender ->
    [f] violeta
    [n] violeta
   *[m] violeta
  }
named-colour-Brown = { $gender ->
    [f] marrón
    [n] marrón
   *[m] marrón
  }
