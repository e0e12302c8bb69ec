# The desk in Spanish: what all pages of the desk share.

# Navigation and what stands on every page.
tab-tickets = Tickets
tab-trays = Bandejas
tab-show = Feria
tab-kiosks = Tabletas
pages = Páginas
sign-out = Cerrar sesión
do-it = Hacerlo
go-back = Volver
to-tickets = A los tickets
understood = Entendido
practice-on = Práctica: nada cuenta.
practice-ends-below = Se termina abajo.
practice-end-there = Terminarla en la página «Feria»
practice-cut-short = La caja se cerró durante una práctica. Lo practicado se ha descartado; todo lo demás sigue como estaba.
catalogue-mistakes = { $n ->
    [one] El catálogo tiene 1 error; se usa el último bueno.
   *[other] El catálogo tiene { $n } errores; se usa el último bueno.
  }
see-mistakes = Ver qué está mal
tickets-not-taken = { $n ->
    [one] 1 ticket de las tabletas no se aceptó.
   *[other] { $n } tickets de las tabletas no se aceptaron.
  }
see-not-taken = Ver cuáles y aceptarlos
battery-low-here = La batería de este ordenador está al { $n } %. Enchufa el cargador.
battery-low-tablet = La batería de la tableta { $digit } está al { $n } %. Enchufa el cargador.
battery-charging = batería al { $n } %, con cargador
battery-alone = batería al { $n } %, sin cargador
back-to-kiosk = Volver a la pantalla de los clientes
refused-way-back = en este ordenador no hay pantalla de clientes
disk-nearly-full-here = El disco de este ordenador está casi lleno. Haz sitio pronto: con el disco lleno no se puede anotar ningún ticket.

# A refusal, and the seller’s PIN for one act.
not-done-title = No se hizo
not-done = Eso no se hizo
refused-sign-in = inicia sesión primero
refused-language = no hay páginas en este idioma
refused-number = esto no es un número de ticket
refused-no-number = ningún ticket de esta feria tiene este número
sellers-pin = El PIN de la vendedora
needs-sellers-pin = Para esto hace falta el PIN de la vendedora
sellers-to-do = { $what } le toca a la vendedora
sellers-this-once = { $what } le toca a la vendedora. Con su PIN se hace esta vez, y sigues con la sesión de { $helper }.
act-take-back = Recoger lo pagado
act-other-way = Corregir un pago
act-reduce = Rebajar tanto
act-other-sum = Cobrar una suma que no es de esta mesa
act-about-show = Decir qué feria es
act-close-show = Cerrar una feria
act-practise = Empezar una práctica
act-end-practice = Terminar la práctica
act-pair = Conectar una tableta
act-release = Soltar una tableta

# What the page’s script says.
script-silent = La caja no responde desde las { $time }. Se vuelve a intentar solo.
script-waiting = La caja aún no ha respondido…
script-lost = Puede que «{ $what }» no haya llegado.
script-unsure = La caja no respondió a «{ $what }». Mira si se hizo.
script-again = Anotarlo otra vez
script-leave = Dejarlo
script-signed-out = Se cerró tu sesión antes de anotar «{ $what }».
script-enter = Anotarlo ahora
script-five-digits = Un número de ticket tiene cinco cifras, como 3-042-6.
script-wrong-digit = { $typed } no es un número de ticket: hay una cifra mal o dos cambiadas; mira otra vez el ticket.
ago-now = ahora mismo
script-minutes = hace { $n } min
script-hours = hace { $h } h { $n } min
script-new-above = { $n } más arriba
script-new-below = { $n } nuevos abajo
script-new-ticket = Ticket nuevo { $what }
script-new-tickets = Tickets nuevos: { $what }
script-more-waiting = Tickets nuevos al final; esperan { $n }
