# The desk in English: guests who wait for a seat, and the board.

waiting-title = Waiting for a seat
waiting-about = When all seats are taken, guests get a number, design on a tablet meanwhile, and are called. Say how many seats the table has at this show.
waiting-seats = Seats at the table
waiting-seats-enter = That many seats
waiting-seats-change = Another number of seats
waiting-table = At the table
waiting-sitting = { $n } of { $of } seats taken
waiting-tally = { $n ->
    [0] nobody waits
    [one] 1 waits
   *[other] { $n } wait
}
waiting-new-guest = A guest who comes now: { $wait }
waiting-no-wait = no wait
waiting-up-to = up to { $to } min
waiting-from-to = { $from } to { $to } min
waiting-take = Give number { $number }
waiting-given = Number { $number } is given: { $wait }.
waiting-sit-down = Somebody sits down
waiting-seat-free = A seat is free
waiting-call = Call { $number }
waiting-free-and-call = A seat is free: call { $number }
waiting-called = Called
waiting-came = Is here
waiting-not-come = Has not come
waiting-line = The line
waiting-nobody = Nobody waits for a seat.
waiting-gone = Does not wait any more
waiting-absent = Called and not come
waiting-late = Is here now: next
waiting-board = Board of numbers
waiting-board-hint = For any screen or old phone in the desk’s network: open the address there. It needs no PIN and shows numbers only.
waiting-board-come = Please come to the table
waiting-board-none = Nobody is called now.
waiting-board-new = New guests: { $wait }
waiting-board-silent = The desk is not heard. Please ask at the table.
waiting-elsewhere = number { $number } does not stand there any more; look at the line again
waiting-no-seat = no seat is free; wait until somebody gets up, or say that who was called has not come
waiting-nobody-sits = nobody sits at the table, so no seat becomes free
waiting-others-wait = others wait and come first; give a number
waiting-no-seats = { $seats } is no number of seats; it is 1 to 99
waiting-full = 400 wait already; nobody would wait that long
waiting-no-step = { $found } is nothing that is done in the line
