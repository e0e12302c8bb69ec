# The desk in English: the tickets' pages.

# Who a piece is for.
for-under3 = for under 3
for-from3to5 = for 3 to 5 years
for-from6to12 = for 6 to 12 years
for-from13 = for 13 or older
for-unknown = wearer not asked

# Counts, lengths and what is left.
count-drops = { $n ->
    [one] { $n } drop
   *[other] { $n } drops
  }
count-tickets = { $n ->
    [one] { $n } ticket
   *[other] { $n } tickets
  }
count-parts = { $n ->
    [one] { $n } part
   *[other] { $n } parts
  }
count-more-parts = { $n ->
    [one] { $n } more part
   *[other] { $n } more parts
  }
count-times = { $n ->
    [one] { $n } time
   *[other] { $n } times
  }
count-minutes = { $n ->
    [one] { $n } minute
   *[other] { $n } minutes
  }
count-free-pieces = { $n ->
    [one] { $n } free piece
   *[other] { $n } free pieces
  }
count-files = { $n ->
    [one] { $n } file
   *[other] { $n } files
  }
length-both = { $inches } in · { $cm } cm
free-all-held = all held
free-none = sold out
free-some = { $n } free
none-left-touch = The count says that no “{ $name }” is left. If it lies before you, touch “It is here”.
no-picture = no picture

# What became of a ticket.
state-sent = sent
state-called = called
state-checked = checked
state-rung_up = rung up
state-handed_over = handed over
state-let_go = let go
state-taken_back = taken back
