# The desk in English: drawers, spools, and what is cut at the table.

drawers-title = Drawers and spools
drawers-about = What lies there, as counted, less what was cut by a list or sold in another length since. What is made for the trays is counted here only when you count it.
drawers-pieces = { $n ->
    [one] 1 piece
   *[other] { $n } pieces
  }
drawers-no-spools = no spool is left
drawers-spools = { $each }; { $all } in all
part-new = Write down a part
part-name = What the part is called
part-measure = How it is counted
part-by-piece = by the piece, in a drawer
part-by-length = by the length, on spools
part-there-now = What lies there now: pieces, or each spool as 10m; 735cm
part-offer-amount = What a supplier sells at once: pieces, or the length
part-offer-price = What that costs, in { $currency }
part-kerf = What each cut takes, as 4mm, if it goes by the length
part-keep-from = From which length on you keep a remnant, as 35cm
part-add = Add what came
part-add-pieces = How many pieces came
part-add-spools = What came, each spool as 10m; 10m
part-add-do = Add
part-count = Count anew
part-count-pieces = How many pieces lie in the drawer
part-count-spools = What lies there, each spool and remnant as 10m; 735cm
part-strike = Strike this part out
part-less-than-file = parts.ron says another figure; lists and sales have taken the rest since.
part-did-new = part { $part } written down
part-did-count = { $part } counted
part-did-add = { $part } added to
part-did-strike = part { $part } struck out
part-no-name = Write what the part is called, in { $most } letters at most.
part-no-keep-from = Tell from which length on you keep a remnant, as 35cm.
part-there = there is a part “{ $part }” already
part-none = there is no part “{ $part }”
part-used = “{ $part }” stands in recipes ({ $recipes }) and lots ({ $lots }); as long as it does, it stays
part-used-since = of what that brought of “{ $part }”, something was cut or sold since; nothing was undone. Count what lies there instead
table-cuts-title = Cut at the table
table-cuts-about = A chain in another length than lies ready comes off its spool when it is paid, and its clasp and rings come out of their drawers, by the recipe. The shortest piece that is long enough counts as cut; if you cut another, count anew. A piece that comes back brings nothing of that back.
table-cuts-off = { $part }: { $cut } off { $from };
table-cuts-missing = By the count there was not enough of “{ $part }”; nothing was taken off it. Count what lies there.
table-cuts-on-ticket = Cut to length at the table: when it is paid it comes off the spool, and none of the chains that lie ready is gone. If it is cut and then let go, count the spool.
table-cuts-taken-back = Its chain was cut to length: nothing of it goes back onto the spool or among the chains that lie ready.
history-workbook = length taken off the spool
begin-parts = Say what things are made of
begin-hour = What an hour of your work counts, in { $currency }
begin-step = In which steps prices read well on a small mark, in { $currency }
begin-parts-do = Begin
begin-parts-about = This begins parts.ron in the catalogue’s folder. Parts are written down here; which of them a charm or a base takes stands there under recipes. What is not asked is a guess there and says so.
begin-did = parts.ron begun
begin-nothing = Nothing is no sum; write what it counts.
