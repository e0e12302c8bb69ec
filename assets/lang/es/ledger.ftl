# The desk in Spanish: why the ledger refuses.

# The ledger's file and its disk.
ledger-disk-full = el disco está lleno, así que no se anotó nada; lo guardado está a salvo. Haz sitio en este ordenador y hazlo otra vez
ledger-database = no se pudo leer o escribir el libro de caja: { $why }
ledger-damaged = una anotación del libro de caja está dañada: { $why }
ledger-unreadable = el ticket { $number } no se puede leer ({ $why }); lo demás del libro de caja no se ve afectado
ledger-damaged-file = el libro de caja { $file } está dañado ({ $why }), así que la caja no se abrió; no se cambió nada en él.
ledger-emptied = el libro de caja { $file } está vacío o no está, aunque esta carpeta tenía uno, así que la caja no se abrió. ¿Se copió sin ledger.sqlite-wal al lado, mientras una caja funcionaba?
ledger-what-to-do = Qué puedes hacer: saca de { $folder } todos los archivos cuyo nombre empieza por «ledger.» y guárdalos. Después, una de dos
ledger-put-backup = - pon allí una copia con el nombre ledger.sqlite (hecha con `chatelaine backup`) y empieza de nuevo: se pierde lo anotado desde esa copia, salvo los tickets que aún esperan en una tableta; o
ledger-begin-anew = - empieza sin ella: comienza un libro de caja nuevo. Los tickets, sumas y cuentas del antiguo no están en él; se elige otra vez el PIN y se conectan otra vez las tabletas.
ledger-found-damaged = el archivo del libro de caja está dañado; cierra la caja y ábrela de nuevo: entonces dice qué se puede hacer
ledger-not-kept = esto no se pudo guardar y no se anotó nada de ello ({ $why }); hazlo otra vez
ledger-panicked = algo salió mal en la caja y no se anotó nada de esto; lo anotado antes está a salvo
ledger-old-library = este programa se hizo con SQLite { $version }, que puede perder una anotación confirmada; hace falta 3.51.3 o posterior
ledger-newer = el libro de caja lo escribió una versión posterior de este programa (estructura { $found }, esta conoce la { $known })
ledger-older = el libro de caja es de una versión anterior (estructura { $found }, esta tiene la { $known }); abre la caja una vez con él

# Shows.
ledger-last-show = la feria { $show } tiene el último número que tiene un libro de caja, así que no puede seguirle otra; no se cerró nada. Empieza un libro de caja nuevo
ledger-show-closed = la feria { $show } está cerrada, y lo que fue ya no se puede cambiar
ledger-no-place-name = «{ $found }» no es un nombre de lugar; escribe hasta { $most } caracteres sencillos
ledger-no-host-name = «{ $found }» no es un nombre de anfitriona; escribe hasta { $most } caracteres sencillos
ledger-no-fee = { $found } no es una tasa de puesto; escribe un importe de 0 a { $most } con { $digits } decimales como mucho
ledger-no-float = { $found } no es un fondo de cambio; escribe un importe de 0 a { $most } con { $digits } decimales como mucho
ledger-no-tax = { $found } no es un impuesto; escribe un porcentaje de 0 a 100 con 4 decimales como mucho

# Tickets.
ledger-sum-not-confirmed = la suma del ticket no es de esta mesa; di primero qué se cobra
ledger-sum-stands = la suma del ticket es de esta mesa; se cobra como el cliente la vio
ledger-other-currency = la suma está en { $found } y esta mesa cobra en { $taken }; cobra los precios de hoy o deja ir el ticket
ledger-no-ticket = no hay ningún ticket { $id }
ledger-no-line = el ticket no tiene esa línea
ledger-state = un ticket «{ $from }» no puede pasar a «{ $to }»
ledger-closed = un ticket «{ $state }» ya no se puede cambiar
ledger-not-ticked = { $n ->
    [one] 1 parte de la pieza aún no está marcada
   *[other] { $n } partes de la pieza aún no están marcadas
  }
ledger-not-told = la pieza tiene avisos; marca que se le dijeron al cliente antes de cobrar
ledger-not-suitable = la pieza no es para esta edad ({ $hazards }); cambia la pieza o para quién es, o confirma cada uno como vendido a un adulto
ledger-forbidden = una parte de la pieza no se puede vender a nadie ({ $hazards }); quítala de la pieza
ledger-no-hazard = nada de este tipo va en contra de la pieza como está ahora
ledger-none-left = según la cuenta no queda «{ $name }»; si está delante de ti, di que se encontró
ledger-not-sold = un ticket «{ $state }» no se vendió, así que no se puede recoger nada de él
ledger-opened-otherwise = con este formulario ya se abrió otra pieza; empieza una venta nueva para esta

# Bills.
ledger-no-bill = no hay ninguna cuenta { $id }
ledger-not-on-bill = el ticket no está en esta cuenta
ledger-with-others = el ticket está en una cuenta con otras cosas, o una parte está pagada; cobra en la cuenta
ledger-long-bill = una cuenta tiene { $most } tickets y { $most } líneas como mucho; empieza otra
ledger-bill-changed = la cuenta ha cambiado mientras tanto, queda por pagar { $due }; mírala otra vez, no se cobró nada
ledger-nothing-to-pay = todo lo de la cuenta está pagado
ledger-no-part = { $amount } no es una parte de lo debido: di un importe mayor que 0 y hasta { $due }, en monedas que existan
ledger-given-too-little = se dio { $given } y se debe { $due }; di lo que se dio, o cobra una parte
ledger-paid-already = esto está pagado, en todo o en parte; recógelo con su motivo
ledger-not-paid = esto aún no está pagado; quítalo
ledger-right-already = este pago ya está anotado así, o ya se corrigió
ledger-no-reason = di por qué; bastan unas palabras
ledger-no-words = escribe unas palabras en una línea, { $most } caracteres como mucho

# Parts and the catalogue.
ledger-no-count = aquí no se cuenta nada llamado «{ $name }»
ledger-too-many-there = habría más de { $most }, y ninguna casilla contiene tantas
ledger-no-base = no hay ninguna base «{ $name }» en el catálogo
ledger-no-base-like = no hay ninguna base «{ $name }» en el catálogo; ¿querías decir «{ $like }»?
ledger-no-drop = no hay ningún colgante «{ $name }» en el catálogo
ledger-no-drop-like = no hay ningún colgante «{ $name }» en el catálogo; ¿querías decir «{ $like }»?
ledger-no-fit = la anilla de «{ $name }» no entra a mano en «{ $base }»: abre { $opens } mm y hacen falta más de { $needs } mm
ledger-no-length = «{ $base }» se hace de { $shortest } mm a { $longest } mm, no de { $length } mm
ledger-bangle-length = «{ $base }» es un brazalete, que no tiene largo; deja `length` fuera

# Tablets, helpers, numbers.
ledger-nine-kiosks = nueve cifras están dadas, o descansan hasta que cierre la feria porque se soltó su tableta, y una es de la caja; cierra la feria, o conecta de nuevo una tableta suelta
ledger-no-digit-for-the-desk = las tabletas tienen las diez cifras, así que la caja no tiene ninguna para números propios; suelta una tableta y después cierra la feria
ledger-no-name = «{ $name }» no puede ser un nombre: un nombre tiene de 1 a { $most } caracteres, todos visibles, y ninguna coma
ledger-name-taken = «{ $name }» ya trabaja aquí; usa otro nombre, para que las anotaciones digan quién las hizo
ledger-sellers-name = { $name } es el nombre de la vendedora; usa otro, para que las anotaciones digan quién las hizo
ledger-staff-full = ya ayudan aquí { $most } personas; quita a alguien que ya no venga
ledger-nobody = nadie llamado «{ $name }» trabaja aquí
ledger-number-shape = un número de ticket tiene cinco cifras, como 3-042-6
ledger-number-check = { $number } no es un número de ticket: una cifra está mal o dos están cambiadas; mira el ticket otra vez
ledger-number-range = una tableta da los números 000 a 999 en una feria; cierra la feria para empezar de nuevo
