# The desk in English: a tray by one photo.

photo-busy = Another photo is being worked on just now. Send yours again in a moment.
tray-photo-title = Tray { $letter } by one photo
tray-photo-how = Take the tray straight from above, with all four inner corners in the photo, in even light and without a flash. One sort in each compartment, a few of it, not on top of each other.
tray-photo-take = Take the photo now
tray-photo-choose = Or choose one that is there
tray-photo-send = Read the photo
tray-photo-stays-here = The photo stays on this computer, without the place where it was taken, until its pictures lie on the table or you throw it away.
tray-photo-begun = Photos that are begun
tray-photo-of = Go on with the photo of { $time }
tray-photo-none = Choose a photo first.
tray-photo-gone = this photo is not here any more; take it again
tray-photo-no-corners = The four corners make no tray: set them in turn around it.
tray-photo-no-grid = One photo shows at most 30 rows and columns, and 300 compartments. Divide the tray into two.
tray-photo-no-width = Type the inner width of the tray in millimetres, from 40 to 2000.
tray-photo-no-number = A corner lies between 0 and 100 percent of the photo.
tray-photo-corners = The corners of tray { $letter }
tray-photo-found = The corners were found. Drag them where they are not right.
tray-photo-not-found = The corners were not found. Drag each to an inner corner of the tray.
tray-photo-turn = Turn by a quarter
tray-photo-turn-hint = until { $home } stands in its compartment
tray-photo-width = Inner width of the tray, from left to right, in millimetres
tray-photo-cut = Cut everything out
tray-photo-by-number = Corners as numbers
tray-photo-across = Corner { $n }: from the left, in percent
tray-photo-down = Corner { $n }: from above, in percent
tray-photo-seen = The photo with the walls of the tray drawn over it
tray-photo-throw-away = Throw this photo away
tray-photo-pieces = What tray { $letter } shows
tray-photo-tally = { $cut } cut out, { $tiles } as tiles.
tray-photo-nothing-seen = Nothing was seen in any compartment. Set the corners again, or take another photo.
tray-photo-take-all = Take all of these
tray-photo-mend-hint = Touch one that is not right.
tray-photo-corners-again = Set the corners again
tray-photo-stays = stays as it is
tray-photo-empty = nothing seen
tray-photo-tile = as a tile
tray-photo-whole = whole compartment
tray-photo-mix = { $n ->
    [0] a mix, nothing told apart
   *[other] a mix, { $n } told apart
  }
tray-photo-sure = sure
tray-photo-unsure = not sure
tray-photo-mend = The picture of { $home }
tray-photo-mend-head = its picture
tray-photo-strokes = Stroke over what is missing to keep it, or over what is too much to drop it.
tray-photo-strokes-do = What a stroke does
tray-photo-keep = Keep
tray-photo-drop = Drop
tray-photo-stroke-back = Last stroke away
tray-photo-whole-seen = The compartment as it is in the photo, to be stroked over
tray-photo-cut-again = Cut out again
tray-photo-as-cut = Cut out
tray-photo-as-tile = As a tile
tray-photo-as-whole = Whole compartment
tray-photo-as-mix = As a mix
tray-photo-as-nothing = No picture from here
tray-photo-nothing-left = Nothing is left of it. Take a stroke away, or keep it as a tile.
tray-photo-no-strokes = Stroke over the picture first.
tray-photo-prices = Prices for tray { $letter }
tray-photo-priced = { $n } of { $of } have a price.
tray-photo-has-price = has a price
tray-photo-all-priced = { $n ->
    [0] Nothing here needs a price.
   *[other] All { $n } have a price.
  }
tray-photo-same-price = { $price } again
tray-photo-leave-out = Leave { $home } empty
tray-photo-to-pieces = To the pictures
tray-photo-lay = { $n ->
    [one] Lay it on the table
   *[other] Lay all { $n } on the table
  }
table-did-photo = { $n ->
    [one] 1 picture from a photo of tray { $letter }
   *[other] { $n } pictures from a photo of tray { $letter }
  }
named-name = { $colour } { $sort }
named-name-sized = { $size } { $colour } { $sort }
named-mix = Mixed pieces
named-gender-Charm = m
named-gender-Bead = m
named-gender-Vial = m
named-gender-Locket = m
named-gender-Key = m
named-gender-Crystal = m
named-gender-Tassel = m
named-gender-Found = m
named-small = { $gender ->
    [f] small
    [n] small
   *[m] small
  }
named-large = { $gender ->
    [f] large
    [n] large
   *[m] large
  }
named-colour-Golden = { $gender ->
    [f] golden
    [n] golden
   *[m] golden
  }
named-colour-Silvery = { $gender ->
    [f] silvery
    [n] silvery
   *[m] silvery
  }
named-colour-Coppery = { $gender ->
    [f] coppery
    [n] coppery
   *[m] coppery
  }
named-colour-Clear = { $gender ->
    [f] clear
    [n] clear
   *[m] clear
  }
named-colour-White = { $gender ->
    [f] white
    [n] white
   *[m] white
  }
named-colour-Black = { $gender ->
    [f] black
    [n] black
   *[m] black
  }
named-colour-Red = { $gender ->
    [f] red
    [n] red
   *[m] red
  }
named-colour-Pink = { $gender ->
    [f] pink
    [n] pink
   *[m] pink
  }
named-colour-Orange = { $gender ->
    [f] orange
    [n] orange
   *[m] orange
  }
named-colour-Yellow = { $gender ->
    [f] yellow
    [n] yellow
   *[m] yellow
  }
named-colour-Green = { $gender ->
    [f] green
    [n] green
   *[m] green
  }
named-colour-Blue = { $gender ->
    [f] blue
    [n] blue
   *[m] blue
  }
named-colour-Violet = { $gender ->
    [f] violet
    [n] violet
   *[m] violet
  }
named-colour-Brown = { $gender ->
    [f] brown
    [n] brown
   *[m] brown
  }
