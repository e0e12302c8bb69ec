# The desk in English: paper for the table, and finding where a stray drop belongs.

# On the paper.
labels-title = Paper for { $table }
labels-marks = Price marks
labels-tags = Tags for chains and bangles
labels-set-up = Setting up
labels-prices = Prices
labels-bases = Chains and bangles
labels-lengths = { $from_in } to { $to_in } in · { $from_cm } to { $to_cm } cm
labels-tax-added = Plus { $percent } % tax
labels-tax-included = With { $percent } % tax in it
labels-foot = { $title }, sheet { $n } of { $all }. Cut along the lines; fold at the dashes, or cut there too.
labels-ruler = { $mm } mm if printed at true size.
labels-map-hint = as it lies in front of the guests
labels-lay = { $n } × { $name } · { $price }
labels-first-desk = The desk is on, and somebody is signed in
labels-first-tablets = The tablets are charged and show this table
labels-first-float = The float is counted
labels-first-cautions = The card of cautions lies beside the trays
labels-first-put-back = The code to where a stray drop belongs is in reach of the helpers
labels-code-hint = For helpers: point the phone’s camera here, then touch the picture of the drop you have found.

# On the desk’s pages.
labels-page = Paper for the table
labels-page-hint = Price marks for both rims of every compartment, tags, maps, lists: as a PDF to print and cut.
labels-what = What
labels-all = All of it
labels-maps = Maps of the trays
labels-code = Code to where a stray drop belongs
labels-sheet = Sheets
labels-columns = Marks beside each other
labels-rows = Marks below each other
labels-margin-above = Margin above and below, in mm
labels-margin-beside = Margin left and right, in mm
labels-grid-hint = As it stands, a mark is { $width } × { $height } mm, about the size of a compartment’s rim. With an even number below each other the two of a compartment lie head to head: fold them over a rim, or cut them apart.
labels-tray = Which tray
labels-every-tray = All trays
labels-language = Language
labels-how-much = How much of it
labels-changed-only = Only what is new since the last print
labels-changed = { $n ->
    [0] All marks are as they were printed last.
    [one] 1 mark is new since the last print: { $homes }
   *[other] { $n } marks are new since the last print: { $homes }
}
labels-never = No marks were printed yet.
labels-make = Make the PDF
labels-done = They are printed
labels-done-hint = Print at true size (100 %), not fitted to the page. Once the marks are cut, say so, and next time only those come that say something else.
labels-noted = Noted. Only what changes from now on is new.
labels-stale = The table has changed since this page was made. Make the PDF again before you say that it is printed.
labels-nothing = nothing of this is on the table, or nothing of it is new
labels-grid-shape = a grid has columns and rows, as 4 and 14
labels-grid-margin = a margin is a number of millimetres from 0 to 60
labels-grid-count = 1 to 10 marks beside each other and 1 to 28 below each other can be set
labels-grid-small = marks of { $width } × { $height } mm are too small to be read; take fewer, for 20 × 10 mm at least
labels-not-noted = it could not be noted what was printed: { $why }
put-back-none = There is nothing on the table yet.
put-back-at = { $name } belongs in { $home }.
