# La caja en español: clientes que esperan un sitio, y el tablero.

waiting-title = Esperar un sitio
waiting-about = Cuando todos los sitios están ocupados, los clientes reciben un número, diseñan mientras tanto en una tableta y se les llama. Di cuántos sitios tiene la mesa en esta feria.
waiting-seats = Sitios en la mesa
waiting-seats-enter = Tantos sitios
waiting-seats-change = Otro número de sitios
waiting-table = En la mesa
waiting-sitting = { $n } de { $of } sitios ocupados
waiting-tally = { $n ->
    [0] nadie espera
    [one] espera 1
   *[other] esperan { $n }
}
waiting-new-guest = Quien llega ahora: { $wait }
waiting-no-wait = sin espera
waiting-up-to = hasta { $to } min
waiting-from-to = de { $from } a { $to } min
waiting-take = Dar el número { $number }
waiting-given = Se ha dado el número { $number }: { $wait }.
waiting-sit-down = Alguien se sienta
waiting-seat-free = Hay un sitio libre
waiting-call = Llamar al { $number }
waiting-free-and-call = Hay un sitio libre: llamar al { $number }
waiting-called = Llamados
waiting-came = Está aquí
waiting-not-come = No ha venido
waiting-line = La cola
waiting-nobody = Nadie espera un sitio.
waiting-gone = Ya no espera
waiting-absent = Llamados que no han venido
waiting-late = Ya está aquí: el siguiente
waiting-board = Tablero de números
waiting-board-hint = Para cualquier pantalla o teléfono viejo en la red de la caja: abre allí la dirección. No necesita PIN y solo muestra números.
waiting-board-come = Ven a la mesa, por favor
waiting-board-none = Ahora no se llama a nadie.
waiting-board-new = Nuevos clientes: { $wait }
waiting-board-silent = La caja no responde. Pregunta en la mesa.
waiting-elsewhere = el número { $number } ya no está ahí; mira otra vez la cola
waiting-no-seat = no hay ningún sitio libre; espera a que alguien se levante, o di que la persona llamada no ha venido
waiting-nobody-sits = nadie está sentado a la mesa, así que no queda libre ningún sitio
waiting-others-wait = otros esperan y van primero; da un número
waiting-no-seats = { $seats } no es un número de sitios; va de 1 a 99
waiting-full = ya esperan 400; nadie esperaría tanto
waiting-no-step = { $found } no es ningún paso de la cola
