# The desk in Spanish: what the seller reads of cautions.

# The hazards by their names.
hazard-small_part = pieza pequeña
hazard-small_ball = pelota pequeña
hazard-magnet = imán
hazard-coin_cell = pila de botón
hazard-glass = vidrio
hazard-sharp = afilado o punzante
hazard-breakaway = no se abre al tirar
hazard-cord_loop = lazo largo
hazard-unknown_metal = metal desconocido
hazard-lead = plomo
hazard-cadmium = cadmio
hazard-nickel = níquel
hazard-paint = pintura
hazard-food_allergen = alérgeno alimentario
hazard-looks_like_food = parece comida
hazard-liquid = líquido
hazard-heavy_on_child = pesado para un niño
hazard-chain_too_short = cadena demasiado corta
hazard-bangle_size = talla del brazalete

# What is said to the seller beside a caution; the English stands in the rules and the code as well, and a test holds them together.
seller-for-you = Para ti:
seller-small-both = La anilla y el cuerpo caben en el cilindro de ensayo.
seller-small-drop = La anilla { $ring ->
    [fits] cabe en el cilindro de ensayo
    [measure] es un caso dudoso: mídela con el cilindro de ensayo
   *[no] no cabe en el cilindro de ensayo
  }; el cuerpo { $body ->
    [fits] cabe en el cilindro de ensayo
    [measure] es un caso dudoso: mídelo con el cilindro de ensayo
   *[no] no cabe en el cilindro de ensayo
  }.
seller-small-ends = { $size ->
    [fits] El cierre o las anillas de los extremos caben en el cilindro de ensayo.
    [measure] El cierre o las anillas de los extremos son un caso dudoso: mídelos con el cilindro de ensayo.
   *[no] El cierre y las anillas de los extremos no caben en el cilindro de ensayo.
  }
seller-small-hoop = { $size ->
    [fits] El brazalete entero cabe en el cilindro de ensayo.
    [measure] Es un caso dudoso: mídelo con el cilindro de ensayo.
   *[no] El brazalete en sí no cabe en el cilindro de ensayo.
  }
seller-small-off = { $size ->
    [fits] Lo que puede soltarse cabe en el cilindro de ensayo.
    [near] Lo que puede soltarse es un caso dudoso: mídelo.
    [measure] Lo que puede soltarse es un caso dudoso: mídelo con el cilindro de ensayo.
   *[no] Lo que puede soltarse no cabe en el cilindro de ensayo.
  }
seller-found-forbidden = Una prueba dio más de lo que permite la norma ({ $figure }): no se puede vender.
seller-found-grave = Una prueba dio más de lo que permite la norma ({ $figure }): no lo vendas para esta persona.
seller-found = Una prueba dio más de lo permitido para niños ({ $figure }).
seller-ppm = { $number } ppm
seller-nickel-rate = { $number } µg/cm² por semana
seller-elsewhere = Una prueba dio que cumple el límite de aquí. Di lo que se encontró a quien le afecte.
seller-exempt = La norma hace una excepción bajo sus condiciones ({ $why }); guarda lo que lo demuestra.
exempt-CrystalGlass = vidrio cristal de las categorías 1 a 4
exempt-Enamel = esmalte
exempt-NaturalStone = piedra natural
exempt-Before1961 = una pieza anterior a 1961
seller-declared = El proveedor lo declara por escrito ({ $paper }, { $day }); eso no es un informe de pruebas. Guarda el papel.

# As the rules have it, where nothing was tested and nobody stated anything.
seller-usual-small_part = No es para menores de 3 años. De 3 a 5 años, di que se puede tragar; a los demás, di que lo mantengan lejos de menores de 3 años.
seller-usual-small_ball = No cabe en el cilindro de ensayo, pero es como una bola pequeña. Las bolas en un cordón o lazo también cuentan: no es para menores de 3 años.
seller-usual-magnet = A partir de 50, o si nadie lo sabe, no se puede vender donde esté suelto o pueda soltarse. Mídelo, o quítalo de la mesa.
seller-within-magnet = Está por debajo del límite de la norma, pero ningún imán es para un niño pequeño, y dos pueden atraerse dentro del cuerpo. Di a todos lo que hacen los imanes tragados y que los alejen de los marcapasos.
seller-usual-coin_cell = Prueba la tapa antes de entregarlo. Di que una pila tragada es una urgencia: hay que buscar ayuda médica enseguida.
seller-usual-glass = Di que es vidrio y se puede romper. No es para menores de 3 años.
seller-usual-sharp = Enseña la punta o el borde. La norma acaba a los 8 años, dentro de 6 a 12: no es para niños de 12 años o menos.
seller-usual-breakaway = Esta cadena aguanta si se tira de ella. Di que un niño se la quita para jugar y dormir.
seller-within-breakaway = Se abre si se tira con fuerza. Las vías respiratorias de un niño pequeño se cierran con mucho menos: di que se quita para jugar y dormir. No se recomiendan collares a menores de 3 años.
seller-usual-cord_loop = La medida es para menores de 3 años; los lazos más largos se enganchan más a cualquier edad. Más corto cuesta lo mismo.
seller-usual-unknown_metal = Di que nadie ha probado este metal. No lo vendas para niños de 12 años o menos: los niños se llevan las cosas a la boca.
seller-usual-lead = El latón, el metal fundido, los baños y el cristal suelen llevar plomo; sin una prueba no lo vendas para niños de 12 años o menos.
seller-proof-lead = El latón, el metal fundido, los baños y el cristal suelen llevar plomo; sin una prueba, o sin lo que demuestre una excepción, no lo vendas para niños de 12 años o menos.
seller-usual-cadmium = El cadmio es habitual en el metal fundido barato; sin una prueba no lo vendas para niños de 12 años o menos.
seller-usual-nickel = Pregunta si hay alergia al níquel. Sin una prueba nadie puede decir cuánto níquel desprende.
seller-usual-paint = Sin una prueba de la pintura no lo vendas para niños de 12 años o menos.
seller-usual-food_allergen = Di que ya no es comida y qué alérgenos contiene.
seller-usual-looks_like_food = Di que no se come. No es para niños de 5 años o menos.
seller-usual-liquid = Di qué lleva dentro y que no se bebe. No es para menores de 3 años.
seller-usual-heavy_on_child = Ofrece quitar un colgante.
seller-usual-chain_too_short = Mide el cuello. Una cadena más larga cuesta lo mismo.
seller-usual-bangle_size = Deja que se lo pruebe, o mide la mano por los nudillos.
