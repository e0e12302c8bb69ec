# Die Kasse auf Deutsch: Gäste, die auf einen Platz warten, und die Tafel.

waiting-title = Warten auf einen Platz
waiting-about = Sind alle Plätze besetzt, bekommen Gäste eine Nummer, entwerfen solange am Tablet und werden aufgerufen. Sag, wie viele Plätze der Tisch auf diesem Markt hat.
waiting-seats = Plätze am Tisch
waiting-seats-enter = So viele Plätze
waiting-seats-change = Eine andere Zahl von Plätzen
waiting-table = Am Tisch
waiting-sitting = { $n } von { $of } Plätzen besetzt
waiting-tally = { $n ->
    [0] niemand wartet
    [one] 1 wartet
   *[other] { $n } warten
}
waiting-new-guest = Wer jetzt kommt: { $wait }
waiting-no-wait = keine Wartezeit
waiting-up-to = bis { $to } min
waiting-from-to = { $from } bis { $to } min
waiting-take = Nummer { $number } geben
waiting-given = Nummer { $number } ist vergeben: { $wait }.
waiting-sit-down = Jemand setzt sich
waiting-seat-free = Ein Platz ist frei
waiting-call = { $number } aufrufen
waiting-free-and-call = Ein Platz ist frei: { $number } aufrufen
waiting-called = Aufgerufen
waiting-came = Ist da
waiting-not-come = Ist nicht gekommen
waiting-line = Die Schlange
waiting-nobody = Niemand wartet auf einen Platz.
waiting-gone = Wartet nicht mehr
waiting-absent = Aufgerufen und nicht gekommen
waiting-late = Ist jetzt da: als Nächstes
waiting-board = Tafel mit den Nummern
waiting-board-hint = Für jeden Bildschirm und jedes alte Telefon im Netz der Kasse: Öffne dort die Adresse. Dort braucht es keine PIN, und es stehen nur Nummern da.
waiting-board-come = Bitte an den Tisch kommen
waiting-board-none = Gerade ist niemand aufgerufen.
waiting-board-new = Neue Gäste: { $wait }
waiting-board-silent = Die Kasse ist nicht zu hören. Bitte frag am Tisch.
waiting-elsewhere = die Nummer { $number } steht dort nicht mehr; sieh dir die Schlange noch einmal an
waiting-no-seat = kein Platz ist frei; warte, bis jemand aufsteht, oder sag, dass ein aufgerufener Gast nicht gekommen ist
waiting-nobody-sits = niemand sitzt am Tisch, also wird kein Platz frei
waiting-others-wait = andere warten und kommen zuerst; gib eine Nummer
waiting-no-seats = { $seats } ist keine Zahl von Plätzen; möglich sind 1 bis 99
waiting-full = es warten schon 400; so lange würde niemand warten
waiting-no-step = { $found } ist nichts, was man in der Schlange tut
