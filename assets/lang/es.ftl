# El quiosco de Chatelaine en español.
back = Atrás
ok = De acuerdo
close = Cerrar
languages = Idioma
looks = Texto y colores
looks-text = Tamaño del texto
looks-usual = Normal
looks-large = Grande
looks-largest = Muy grande
looks-contrast = Colores
looks-daylight = Luz de día
looks-high = Alto contraste
looks-motion = Movimiento
looks-lively = Con movimiento
looks-calm = Sin movimiento
desk-away = La caja no responde; puedes seguir.
disk-nearly-full = Tableta casi llena: avisa al vendedor.
let-go = Esta tableta no puede dar números; avisa en la caja, por favor.
practice = Práctica: nada cuenta
mix-named = { $name }, uno de { $home }
mix-one = uno de { $home }
mix-note = En { $homes } hay un surtido: el tuyo puede ser distinto.
sold-out = Agotado
tray = Bandeja { $letter }

welcome-unnamed = Haz tu propia joya
welcome-not-paired = Esta tableta aún no pertenece a ninguna caja. Para el vendedor: mantén pulsada la esquina superior izquierda y elige «Vincular con una caja».
welcome-no-catalogue = Aún falta el catálogo de la caja. Para el vendedor: comprueba que la caja funciona y está en la misma red.
welcome-being-laid = Esta mesa aún se está preparando. Vuelve dentro de un ratito.
welcome-invitation = Haz tu propio collar o brazalete. Mira cómo queda y cuánto cuesta, y cámbialo cuantas veces quieras.
welcome-begin = Toca para empezar
seat-come = Ven a la mesa, por favor
seat-from-to = Un sitio en la mesa: de { $from } a { $to } min
seat-up-to = Un sitio en la mesa: hasta { $to } min
put-back = ¿Dónde va esto?
put-back-hint = Toca la foto del colgante que has encontrado.
thread = Tengo un número
thread-ask = Escribe el número del ticket
thread-asking = Buscando…
thread-no-number = Hay una cifra mal. Mira otra vez el número.
thread-unknown = Ninguna pieza tiene este número.
thread-away = Ahora no se puede preguntar a la caja. Prueba en la tableta donde se hizo la pieza.
thread-collect = Reúne todo y ensártalo como en la imagen
thread-collected = { $n } de { $of }
thread-done = Terminado

base-title = Elige tu base
base-onward = Elegir colgantes
base-shorter = Más corto
base-longer = Más largo
base-unfit = No es para esta edad
base-closes = cierra en cuellos de hasta { $neck }
base-neck = Cuello: { $neck }
base-neck-ask = Medida del cuello
neck-title = ¿Cuánto mide el contorno del cuello?
neck-why = Mídelo donde irá la cadena. El dato solo se usa para esta pieza.
neck-unknown = Sin medir
not-to-be-worn = No se debe llevar
base-left-off-title = De vuelta a su sitio
base-left-off = { $n ->
    [one] Un colgante no entra en esta base. Ha vuelto a su compartimento.
   *[other] { $n } colgantes no entran en esta base. Han vuelto a sus compartimentos.
  }
falls-throat = ceñido al cuello
falls-neck = en la base del cuello
falls-collarbone = en la clavícula
falls-below-collarbone = justo bajo la clavícula
falls-breastbone = en el esternón
falls-low = bajo el esternón

stage-undo = Deshacer
stage-redo = Rehacer
stage-anew = Empezar de nuevo
stage-surprise = Sorpréndeme
stage-no-surprise = Nada de lo que queda cumple lo que pides. Muestra más colgantes o sube el presupuesto.
stage-to-left = Un lugar a la izquierda
stage-to-right = Un lugar a la derecha
stage-take-off = Quitar
stage-nearer = Ver de cerca
stage-whole = Ver la pieza entera
stage-true-size = Ver en tamaño real
stage-usual-size = Salir del tamaño real
stage-hint = Toca un colgante o arrástralo a la base.
stage-review = Revisar
stage-no-room-title = No queda sitio
stage-no-room = { $n ->
    [one] En esta base solo cabe un colgante. Quita uno o elige una base más larga.
   *[other] En esta base caben { $n } colgantes. Quita uno o elige una base más larga.
  }
stage-no-room-at-all = { $n ->
    [one] En esta base solo cabe un colgante. Quita uno o elige otra base.
   *[other] En esta base solo caben { $n } colgantes. Quita uno o elige otra base.
  }
trouble-too-short = Este largo es demasiado corto para ese cuello. Elige uno más largo.
trouble-other = Esta pieza no se puede hacer así. Cambia la base o quita un colgante.
rows-before = Filas anteriores
rows-after = Más filas

why-sold-out-title = Agotado
why-sold-out = Ya no queda «{ $name }» en la mesa, o ya cuelga de tu pieza.
why-too-dear-title = Supera tu presupuesto
why-too-dear = Con «{ $name }» la pieza costaría más de lo que tienes. Quita algo o sube el presupuesto.
why-not-for-title = No es para esta edad
why-no-fit-title = La anilla es demasiado pequeña
why-no-fit = La anilla de «{ $name }» tiene una abertura de { $opens } mm; esta base necesita { $needs } mm. Quizá entre en otra.

filters = Buscar
filters-title = ¿Qué quieres ver?
filters-any = Todo
filters-clear = Mostrar todo
filters-show = Listo
filters-budget = Tengo
filters-price = Cada colgante cuesta como mucho
filters-up-to = hasta { $sum }
filters-have = Tengo { $sum }
filters-end = Ya no se busca:
filters-sort = Tipo
filters-colour = Color
filters-finish = Metal

sort-Charm = Dijes
sort-Bead = Cuentas
sort-Vial = Frasquitos
sort-Locket = Guardapelos
sort-Key = Llaves
sort-Crystal = Cristales
sort-Tassel = Borlas
sort-Found = Hallazgos
colour-Golden = dorado
colour-Silvery = plateado
colour-Coppery = cobrizo
colour-Clear = transparente
colour-White = blanco
colour-Black = negro
colour-Red = rojo
colour-Pink = rosa
colour-Orange = naranja
colour-Yellow = amarillo
colour-Green = verde
colour-Blue = azul
colour-Violet = violeta
colour-Brown = marrón
finish-AntiqueBrass = latón envejecido
finish-AntiqueSilver = color plata envejecida
finish-Copper = cobre
finish-Gold = color oro
finish-Silver = color plata
finish-Gunmetal = gris oscuro
finish-Steel = acero

wearer-ask = ¿Para quién es?
wearer-ask-short = ¿Para quién?
wearer-why = Algunas piezas no son seguras para los niños pequeños. No te preguntamos nada más.
wearer-under3 = Menos de 3 años
wearer-from3to5 = De 3 a 5 años
wearer-from6to12 = De 6 a 12 años
wearer-from13 = 13 años o más
wearer-unknown = Sin indicar

lines-title = Cuánto cuesta
lines-subtotal = Subtotal
lines-discount = Descuento
lines-tax = Impuesto
lines-tax-inside = Impuesto incluido
tag-with-tax = con impuesto
lines-total = Total

caution-title = Conviene saberlo
caution-count = { $n ->
    [one] { $n } aviso
   *[other] { $n } avisos
  }
caution-none = No se ha encontrado nada que exija cuidado.
caution-deferral = Es una guía, no un informe de pruebas; deciden las normas locales y una evaluación de seguridad cualificada.
caution-small_part = Piezas pequeñas: un niño menor de 3 años puede atragantarse con ellas.
caution-small_part-away = Piezas pequeñas: mantenlas lejos de los niños menores de 3 años.
caution-small_ball = Peligro de atragantamiento: tiene el tamaño de una bola pequeña. Un niño menor de 3 años puede atragantarse con ella.
caution-magnet = Un imán potente. Los imanes tragados pueden causar daños graves: mantenlo lejos de los niños y de los marcapasos.
caution-magnet-unknown = Un imán, y nadie sabe lo potente que es. Los imanes tragados pueden causar daños graves: mantenlo lejos de los niños y de los marcapasos.
caution-magnet-within = Un imán débil. Un imán tragado puede causar daños: vigila al niño que lo lleve y mantén el imán lejos de los marcapasos.
caution-magnet-together = Varios imanes. Si se tragan, pueden atraerse dentro del cuerpo y causar daños graves: mantenlos lejos de los niños y de los marcapasos.
caution-coin_cell = Una pila de botón: mantenla lejos de los niños. Si se traga, causa quemaduras en pocas horas: busca atención médica de inmediato.
caution-glass = Vidrio: puede romperse en trozos cortantes.
caution-sharp = Un borde o una punta afilados.
caution-breakaway = No se suelta al tirar: quítaselo a un niño cuando juegue o duerma. No recomendado para menores de 3 años.
caution-breakaway-apart = Se suelta si se tira fuerte, pero eso puede no bastar: quítaselo a un niño pequeño cuando juegue o duerma. No recomendado para menores de 3 años.
caution-cord_loop = Un lazo largo puede engancharse: vigila al niño que lo lleve.
caution-unknown_metal = Nadie sabe qué metal es: no se le han hecho las pruebas de plomo, cadmio y níquel.
caution-unknown_metal-declared = Nadie sabe qué metal es. Su proveedor declara por escrito que el plomo, el cadmio y el níquel están dentro de los límites; no se le han hecho las pruebas.
caution-lead = Puede contener plomo; no se le ha hecho la prueba.
caution-lead-declared = Puede contener plomo; su proveedor declara por escrito que está dentro del límite. No se le ha hecho la prueba.
caution-lead-found = Una prueba ha encontrado { $number } ppm de plomo, por encima del límite de { $limit }.
caution-lead-elsewhere = Una prueba ha encontrado { $number } ppm de plomo: dentro del límite de { $limit } que vale aquí, pero más de lo que algunas normas permiten para niños.
caution-lead-children = Una prueba ha encontrado { $number } ppm de plomo: por encima del límite de { $limit } para niños. No conocemos ningún límite para esta edad.
caution-lead-exempt = Una prueba ha encontrado { $number } ppm de plomo. La norma hace aquí una excepción a su límite de { $limit }.
caution-cadmium = Puede contener cadmio; no se le ha hecho la prueba.
caution-cadmium-declared = Puede contener cadmio; su proveedor declara por escrito que está dentro del límite. No se le ha hecho la prueba.
caution-cadmium-found = Una prueba ha encontrado { $number } ppm de cadmio, por encima del límite de { $limit }.
caution-cadmium-elsewhere = Una prueba ha encontrado { $number } ppm de cadmio: dentro del límite de { $limit } que vale aquí, pero más de lo que algunas normas permiten para niños.
caution-cadmium-children = Una prueba ha encontrado { $number } ppm de cadmio: por encima del límite de { $limit } para niños. No conocemos ningún límite para esta edad.
caution-nickel = Puede desprender níquel; no se le ha hecho la prueba. No se debe llevar con alergia al níquel.
caution-nickel-declared = Puede desprender níquel; su proveedor declara por escrito que está dentro del límite. No se le ha hecho la prueba. No se debe llevar con alergia al níquel.
caution-nickel-found = Una prueba ha encontrado que desprende { $number } µg/cm² de níquel por semana, por encima del límite de { $limit }. No se debe llevar con alergia al níquel.
caution-nickel-elsewhere = Una prueba ha encontrado que desprende { $number } µg/cm² de níquel por semana: dentro del límite de { $limit } que vale aquí, pero más de lo que algunas normas permiten para niños. No se debe llevar con alergia al níquel.
caution-nickel-children = Una prueba ha encontrado que desprende { $number } µg/cm² de níquel por semana: por encima del límite de { $limit } para niños. No conocemos ningún límite para esta edad. No se debe llevar con alergia al níquel.
caution-paint = Su pintura puede contener plomo; no se le ha hecho la prueba.
caution-paint-declared = Su pintura puede contener plomo; su proveedor declara por escrito que está dentro del límite. No se le ha hecho la prueba.
caution-paint-found = Una prueba ha encontrado { $number } ppm de plomo en la pintura, por encima del límite de { $limit }.
caution-paint-elsewhere = Una prueba ha encontrado { $number } ppm de plomo en la pintura: dentro del límite de { $limit } que vale aquí, pero más de lo que algunas normas permiten para niños.
caution-paint-children = Una prueba ha encontrado { $number } ppm de plomo en la pintura: por encima del límite de { $limit } para niños. No conocemos ningún límite para esta edad.
caution-food_allergen = Es un adorno, no se come. No se conocen sus alérgenos: no se debe llevar con alergia alimentaria.
caution-food_allergen-known = Es un adorno, no se come. Contiene: { $allergens }. No se debe llevar con alergia a algo de eso.
caution-looks_like_food = Parece comida, pero no se come: un niño puede tomarlo por comida y atragantarse con ello.
caution-liquid = Lleva un líquido dentro: puede romperse o derramarse. No se debe beber.
caution-heavy_on_child = Pesa { $number } g con sus colgantes, mucho para el cuello de un niño.
caution-chain_too_short = Cierra en cuellos de hasta { $number } mm de contorno: mide el cuello.
caution-chain_too_short-own = Cierra en cuellos de hasta { $number } mm de contorno; has indicado { $limit } mm.
caution-bangle_size = Pasa por manos de hasta { $number } mm de contorno: mide la mano.
caution-bangle_size-slips = Mide { $number } mm de contorno por dentro y puede salirse de la mano.
unsuitable-under3 = Esta pieza no es para un niño menor de 3 años.
unsuitable-child = Esta pieza no es para un niño de esta edad.
unsuitable-anyone = Una parte de esta pieza no se debe llevar tal como está. Pregunta al vendedor.
unsuitable-forbidden = No se permite vender una parte de esta pieza. Pregunta al vendedor.
unsuitable-nothing = Nada de esta mesa es adecuado. Pregunta al vendedor.
unsuitable-unknown = Una parte de esta pieza no es para todos los niños. ¿Para quién es?
unsuitable-base = Otra base u otro largo
unsuitable-change = Para otra persona
unsuitable-show = Ver colgantes adecuados
unsuitable-back = Volver a los colgantes
grown-up = Soy mayor de edad y lo he leído.
grown-up-read = { $n ->
    [one] Lee primero el aviso
   *[other] Lee primero los { $n } avisos
  }

allergen-Milk = leche
allergen-Egg = huevo
allergen-Fish = pescado
allergen-Crustaceans = crustáceos
allergen-TreeNuts = frutos de cáscara
allergen-Peanuts = cacahuetes
allergen-Wheat = trigo
allergen-Soybeans = soja
allergen-Sesame = sésamo
allergen-Gluten = gluten
allergen-Celery = apio
allergen-Mustard = mostaza
allergen-Sulphites = sulfitos
allergen-Lupin = altramuces
allergen-Molluscs = moluscos
month-1 = enero
month-2 = febrero
month-3 = marzo
month-4 = abril
month-5 = mayo
month-6 = junio
month-7 = julio
month-8 = agosto
month-9 = septiembre
month-10 = octubre
month-11 = noviembre
month-12 = diciembre
date-month = { $month } de { $year }
date-day = { $n } de { $month } de { $year }
dated-not_noted = fecha no anotada
dated-as_of = texto con fecha: { $day }
dated-of = fecha: { $day }
dated-in_force = en vigor desde: { $day }
dated-applies = se aplica desde: { $day }
dated-made_after = para lo fabricado después de: { $day }
dated-edition = edición { $edition }
status-read = leído
status-second_hand = de segunda mano
status-from_memory = de memoria
status-practice = práctica habitual, sin fuente

review-title = Tu pieza
review-send = Enviar a la caja
review-sending = Enviando…
send-failed-title = No se ha enviado
send-not-paired = Esta tableta aún no pertenece a ninguna caja. Tu pieza sigue aquí; avisa al vendedor.
send-let-go = La caja ya no conoce esta tableta, así que no puede dar ningún número. Tu pieza se queda aquí; pregunta en la caja, por favor.
send-practice-over = La práctica acaba de terminar, así que tu pieza no se ha enviado. Envíala otra vez: desde ahora cuenta.
send-no-numbers = A esta tableta no le quedan números. Tu pieza sigue aquí; avisa al vendedor.
send-disk = La tableta no puede guardar tu pieza ahora. Sigue en la pantalla; enséñasela al vendedor.
send-refused = La caja no ha podido aceptar la pieza. Sigue en la pantalla; enséñasela al vendedor.
send-short-title = Alguien ha sido más rápido
send-short = { $names }: acaban de llevarse la última unidad. El resto de tu pieza sigue aquí; elige otra vez.

sent-title = Tu número
sent-next = Ve a la caja. Cuando digan tu número, montarán tu pieza.
sent-thread = Recoge tus colgantes de sus compartimentos y ensártalos. Después lleva tu pieza a la caja. Con tu número, cualquier tableta vuelve a mostrar esta lista.
sent-kept = Tu pieza está guardada en esta tableta y llegará a la caja. Tu número es válido.
sent-short = Puede que falte uno de los colgantes; en la caja te ayudarán a elegir.
sent-refused = La caja no pudo aceptar tu ticket. Ve allí con tu número; todavía pueden anotarlo.
sent-homes = Dónde están tus colgantes en la mesa
sent-done = Listo

anew-title = ¿Empezar de nuevo?
anew-text = Tu pieza se borra y empiezas con una base vacía.
anew-keep = Conservar mi pieza
anew-yes = Empezar de nuevo
idle-title = ¿Sigues ahí?
idle-text = Si no respondes, tu pieza se borra.
idle-here = Aquí estoy

seller-title = Para el vendedor
seller-asking = Preguntando a la caja…
seller-language = Idioma para un cliente nuevo
seller-hand = Bandejas
seller-right-handed = Bandejas a la derecha
seller-left-handed = Bandejas a la izquierda
seller-looks = Cómo ve la pantalla un cliente nuevo
seller-screen = Tamaño de la pantalla
seller-measured = Un milímetro mide { $px } píxeles. Los clientes pueden ver su pieza en tamaño real.
seller-not-measured = Aún sin medir.
seller-card = Comparar con una tarjeta bancaria
card-ask = Apoya una tarjeta bancaria sobre la dibujada, esquina superior izquierda con esquina superior izquierda. Haz la dibujada igual de grande.
card-much-smaller = Mucho más pequeña
card-smaller = Más pequeña
card-larger = Más grande
card-much-larger = Mucho más grande
card-same = Mismo tamaño
seller-desk = Caja
seller-paired = Vinculada con { $desk } como quiosco { $digit }.
seller-not-paired = Sin vincular con una caja.
seller-waiting = { $n ->
    [0] No espera ningún ticket.
    [one] Un ticket espera su entrega.
   *[other] { $n } tickets esperan su entrega.
  }
seller-let-go = La caja ya no conoce esta tableta: no da números hasta que se vuelva a vincular.
seller-aside = { $n ->
    [one] La caja no aceptó un ticket; su página «Tabletas» lo muestra.
   *[other] La caja no aceptó { $n } tickets; su página «Tabletas» los muestra.
  }
seller-open-desk = Abrir la caja aquí
seller-phone = O abre la caja en un teléfono de la misma red: apunta aquí con la cámara.
seller-desk-not-opened = Aquí no se pudo abrir ningún navegador. Usa un teléfono u otro ordenador.
seller-pair = Vincular con una caja
seller-leave = Salir del quiosco
seller-not-kept = Los ajustes solo valen hasta apagar la tableta; no ha podido guardarlos.
pin-ask = PIN del vendedor
pin-not-set = Aún no se ha elegido un PIN. Elige uno en la caja o escribe el código que muestra su terminal.
pin-wrong = Ese no es el PIN.
pin-wait = Demasiados intentos. Espera { $seconds } segundos.
pin-away = No hay conexión con la caja y esta tableta aún no conoce el PIN.
pair-address = Dirección de la caja
pair-code = Código que muestra la caja
pair-done = Vinculada. Este es el quiosco { $digit }.
pair-wrong-code = Ese no es el código que muestra la caja. Compáralo con la página «Tabletas».
pair-no-code = La caja no muestra ningún código ahora: cada uno vale una vez y diez minutos. Pide otro en la página «Tabletas».
pair-no-digit = La caja no tiene más cifras para otra tableta. Cierra la feria, o conecta de nuevo una tableta suelta.
pair-desk-failed = La caja no pudo anotar el vínculo. Revisa la caja e inténtalo otra vez.
pair-not-reached = Ninguna caja responde en { $desk }. Compara la dirección con la página «Tabletas» de la caja.
pair-not-a-desk = Lo que responde en { $desk } no es una caja. Compara la dirección con la página «Tabletas» de la caja.
pair-disk = Esta tableta no pudo guardar el vínculo. Haz sitio en ella e inténtalo otra vez.
key-erase = Borrar
key-enter = Aceptar

## The card of cautions that is printed at the desk

card-title = { $table }: ¿quién puede llevar qué?
card-about = Avisos según estas normas: { $region }. Cada colgante y cada base por separado. Lo que cuelga junto puede pesar demasiado o ser demasiado largo; el ticket lo dice.
card-bases = Bases
card-ready = sin colgantes, en el largo que está listo
card-drop = Colgante
card-base = Base
card-care = Con cuidado
card-fine = Nada que señalar
card-signs = Qué dicen los signos y de dónde vienen
card-found = { $what } (encontrado en una prueba)
card-declared = { $what } (declarado por el proveedor)
code-small_part = pieza pequeña
code-small_ball = como una bola pequeña
code-magnet = imán
code-coin_cell = pila de botón
code-glass = vidrio
code-sharp = afilado o puntiagudo
code-breakaway = alrededor del cuello
code-cord_loop = lazo largo
code-unknown_metal = metal desconocido
code-lead = plomo
code-cadmium = cadmio
code-nickel = níquel
code-paint = pintura
code-food_allergen = comida, alérgenos
code-looks_like_food = parece comida
code-liquid = líquido
code-heavy_on_child = pesado
code-chain_too_short = medida del cuello
code-bangle_size = medida de la mano
