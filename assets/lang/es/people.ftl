# The desk in Spanish: signing in, helpers, tablets, trays.

# Choosing a PIN and signing in.
setup-title = Elegir un PIN
setup-heading = Elige el PIN de la vendedora
setup-about = De 6 a 12 cifras sin un patrón. Abre esta caja y los ajustes de cada tableta.
setup-code = Código de instalación, como lo muestra el terminal de la caja
pin-field = PIN
pin-again = El PIN otra vez
pin-shape = de 6 a 12 cifras
setup-keep = Guardar este PIN
setup-not-the-code = Este no es el código que muestra el terminal de la caja.
pin-not-same = Los dos no son iguales. Escribe el PIN dos veces.
pin-not-right = Este no es el PIN.
pin-too-many = { $n ->
    [one] Demasiados intentos. Espera 1 segundo, o inicia sesión en el ordenador donde funciona la caja.
   *[other] Demasiados intentos. Espera { $n } segundos, o inicia sesión en el ordenador donde funciona la caja.
  }
pin-not-a-pin = Un PIN tiene de 6 a 12 cifras y nada más.
pin-too-easy = Este PIN es de los primeros que cualquiera probaría. Elige cifras sin un patrón.
sign-in = Iniciar sesión
sign-in-lost = Tu sesión se cerró antes de que esto se anotara. Inicia sesión y hazlo otra vez.
sign-in-sellers-desk = La caja de la vendedora
sign-in-desk = La caja
sign-in-name = Tu nombre
sign-in-name-hint = – la vendedora lo deja vacío
sign-in-who = ¿Quién eres?
sign-in-no-match = Este nombre y este PIN no van juntos.

# Who did something.
seller-by-name = Vendedora
approved-by-the-seller = { $name }, con el permiso de la vendedora

# Another PIN.
change-pin = Cambiar el PIN
change-pin-of = Cambiar el PIN de { $name }
change-own-pin = Cambiar tu PIN
change-pin-about = Se cierra tu sesión en todos los demás teléfonos y portátiles.
change-pin-tablets = Una tableta fuera de alcance sigue con el PIN antiguo hasta que la caja le haya dicho el nuevo.
pin-now = El PIN actual
pin-new = El PIN nuevo, de 6 a 12 cifras sin un patrón
pin-new-again = El PIN nuevo otra vez
change-it = Cambiarlo
new-pin-not-same = Los dos no son iguales. Escribe el PIN nuevo dos veces.

# Helpers.
staff-title = Personas
staff-who = Quién trabaja aquí
staff-you = – tú. Puedes hacerlo todo.
staff-about = Quien ayuda revisa piezas, las cobra y cuenta. Devolver dinero, rebajar mucho, cerrar una feria y conectar o soltar una tableta necesitan tu PIN; puedes escribirlo para esa vez en el teléfono de quien ayuda. Esta página y cerrar la sesión de otros son solo cosa tuya.
staff-add = Añadir ayuda
staff-name = Nombre, como figurará en las anotaciones
staff-add-yes = Añadir y hacer un PIN
staff-since = – ayuda desde { $time }
staff-new-pin = PIN nuevo
staff-remove = Quitar
staff-act = { $act } – { $name }
staff-pin-title = El PIN de quien ayuda
staff-pin-of = El PIN de { $name }
staff-pin-told = Díselo ahora a { $name }: solo se muestra esta vez. En su teléfono, { $name } abre esta caja, escribe su nombre y este PIN, y puede elegir otro PIN en la página «Tabletas».
done = Listo
staff-ask-pin = ¿Un PIN nuevo para { $name }?
staff-ask-pin-text = El que tiene ya no abre nada, y se cierra la sesión en sus teléfonos.
staff-ask-pin-yes = Hacer un PIN nuevo
staff-ask-remove = ¿Quitar a { $name }?
staff-ask-remove-text = Se cierra su sesión en todas partes y ya no puede iniciarla. Lo que anotó conserva su nombre.

# Who is signed in.
devices = Dispositivos con sesión
devices-own = Dónde tienes sesión
device-of = { $name }:
device-at = en { $address }, desde { $time }
device-this = , este
browser-on = { $program } en { $system }
browser-unnamed = Un navegador
sign-out-everywhere = Cerrar sesión en todas partes
sign-everybody-out = Cerrar la sesión de todos

# The tablets, and a phone as another till.
phone-till = Un teléfono como otra caja
phone-till-scan = Apunta aquí con la cámara de un teléfono de la misma red e inicia sesión allí.
phone-till-others = Si no sale nada: otras direcciones
phone-till-alone = Esta caja no está en ninguna red, así que ningún teléfono llega a ella: { $address } solo sirve en este ordenador.
qr-of = Código QR de { $address }
pair-kiosk = Conectar una tableta
pair-type-code = { $n ->
    [one] Escribe esto en la tableta, antes de 1 minuto:
   *[other] Escribe esto en la tableta, antes de { $n } minutos:
  }
pair-desks-address = La dirección de la caja:
pair-here-alone = { $address } (solo en este ordenador: no está en ninguna red)
pair-another-code = Otro código
pair-about = Cada código conecta una tableta y vale diez minutos.
pair-new-code = Código de conexión nuevo
kiosks-paired = Tabletas conectadas
kiosks-tally = Conectadas
kiosks-none = Aún no hay ninguna tableta conectada.
kiosk-since = Conectada { $time }
kiosk-in-reach = al alcance
kiosk-silent = { $n ->
    [one] callada desde hace 1 minuto
   *[other] callada desde hace { $n } minutos
  }
kiosk-not-heard = sin noticias desde que se abrió la caja
kiosk-release = Soltar
kiosk-waiting = { $n ->
    [one] 1 ticket en camino
   *[other] { $n } tickets en camino
  }
kiosk-not-taken = { $n ->
    [one] 1 ticket no se aceptó
   *[other] { $n } tickets no se aceptaron
  }
kiosk-guest-waits = Quizá el cliente espera con el número.
kiosk-unreadable = { $n ->
    [one] 1 archivo de esta tableta debería ser un ticket y no se puede leer. Queda en la carpeta «refused».
   *[other] { $n } archivos de esta tableta deberían ser tickets y no se pueden leer. Quedan en la carpeta «refused».
  }
kiosk-renumbered-of = Del cliente con { $before }:
kiosk-renumbered = { $before } llegó como { $number }
kiosk-comes-in = Llega en cuanto la tableta conteste.
kiosk-goes-away = Se aparta en cuanto la tableta conteste.
kiosk-take-in = Aceptarlo
kiosk-put-away = Apartarlo
put-away-title = ¿Apartar un ticket?
put-away-ask = ¿Apartar el ticket { $number }?
put-away-text = Ya no se avisa de él y no se puede aceptar. Su archivo queda en la tableta, en la carpeta «put-away».
release-title = ¿Soltar una tableta?
release-ask = ¿Soltar la tableta { $digit }?
release-text = No puede enviar más tickets, ni siquiera los que aún guarda, hasta que se conecte de nuevo; entonces recupera su cifra y llegan. Otra tableta recibe la cifra solo después de cerrar la feria.
release-keeps = { $n ->
    [one] Aún guarda 1 ticket: { $numbers }.
   *[other] Aún guarda { $n } tickets: { $numbers }.
  }
release-yes = Soltarla

# The trays and their counts.
trays-card = Quién puede llevar qué: la tarjeta de avisos, para imprimir
trays-bases = Bases
mistakes-title = Errores en el catálogo
mistakes-about = El último catálogo bueno sigue en uso hasta que se corrijan; esta página se pone al día sola.
mistake-at = , línea { $line }, columna { $column }
remarks = Observaciones
remarks-title = Vale la pena mirarlo
cell-change = cambiar la cuenta
cell-held = { $n } en espera
part-free = Libres
part-held = En espera para tickets
part-on-hand = En total
part-how-many = ¿Cuántos hay en el compartimento, libres para llevar?
part-one-less = uno menos
part-one-more = uno más
part-keep = Guardar esta cuenta
part-sold-out = Marcar como agotado
to-trays = A las bandejas
part-no-count = «{ $typed }» no es una cuenta; escribe un número de 0 a { $most }.
cautions-title = Avisos
card-print = Imprimir esta tarjeta
region-US = Estados Unidos
region-EU = Unión Europea
region-UK = Reino Unido

# An address that leads nowhere.
nowhere = No existe esa página
nowhere-text = En esta caja no hay ninguna página { $path }. Quizá la dirección está mal escrita, o lo que había ya no está.
refused-nowhere = no hay nada para tabletas en { $path }

# Why something is refused.
refused-sellers = esto le toca a la vendedora; tu sesión es la de { $name }
refused-sellers-pin = el PIN de la vendedora lo cambia quien lo sabe
refused-no-device = ese dispositivo ya no tiene sesión
refused-no-such-ticket = ese ticket ya no está en la tableta { $digit }; mira otra vez la página «Tabletas»
refused-no-part = nada en el catálogo se llama «{ $name }»
refused-no-picture = ninguna imagen se llama «{ $name }»
refused-pin-not-checked = no se pudo comprobar el PIN
refused-system = este ordenador no puede hacerlo ahora ({ $why }); hazlo otra vez
refused-closing = la caja se está cerrando
refused-panic = algo salió mal en la caja; lo anotado antes está a salvo
refused-too-much = eso es más de lo que la caja acepta de una vez
refused-broke-off = lo enviado se cortó
refused-too-slow = lo enviado no llegó a tiempo; envíalo otra vez
refused-not-read = lo enviado no tiene sentido aquí
refused-not-read-because = lo enviado no se puede leer: { $why }
refused-nobody = nadie sabe quién pregunta
refused-other-name = abre la caja por su número, como en { $address }
refused-other-site = este cambio lo pidió otro sitio; no se cambió nada
refused-practice-not-begun = la práctica no puede empezar, y todo sigue como estaba: { $why }
refused-practice-busy = la práctica no puede empezar, y todo sigue como estaba: el libro de caja estuvo ocupado todo el tiempo; inténtalo otra vez
refused-lost-in-practice = esto se perdería al terminar la práctica: los PIN y las tabletas siguen como están mientras alguien practica. Termina antes la práctica, en la página «Feria»
refused-practice-began = desde que se mostró esta página empezó una práctica, así que no se hizo nada; mira la página otra vez
refused-practice-ended = desde que se mostró esta página terminó la práctica, así que no se hizo nada; mira la página otra vez
refused-tablet-unknown = la caja no conoce esta tableta; conéctala de nuevo
refused-tablets-not-looked-up = la caja no puede consultar sus tabletas ahora
refused-own-key = la clave propia de la tableta debe tener 64 cifras hexadecimales
refused-practice-old-tablet = la caja está practicando; esta tableta tiene una versión anterior, que no sabe practicar
refused-practice-waits = la caja está practicando; lo que cuenta espera en su tableta hasta que termine la práctica
