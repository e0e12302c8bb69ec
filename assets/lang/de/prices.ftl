# The desk in German: what things cost and earn.

prices-title = Kosten und Preise
prices-travel = Fahrt, hin und zurück
prices-pieces = Stücke, die du zu verkaufen erwartest, Basen und Anhänger einzeln gezählt
prices-points = Wie viele verschiedene Preise höchstens
prices-of = Was ein anderer Preis bewirkt: bei
prices-to = Der andere Preis, in { $currency }
prices-reckon = Ausrechnen
prices-change = Was ein anderer Preis bewirkt
prices-earns = Eines verdient dann { $then } statt { $now }.
prices-same = { $n ->
    [one] Wird dann 1 an einem Markt verkauft, verdient es, was jetzt { $sold } verdienen: { $earned }.
   *[other] Werden dann { $n } an einem Markt verkauft, verdienen sie, was jetzt { $sold } verdienen: { $earned }.
  }
prices-never = Wie viele auch verkauft werden, sie verdienen nie, was jetzt verdient wird: { $earned }.
prices-at-a-loss = So wie es ist, verliert jedes { $loss }, wenn sein Anteil am Stand dabei ist.
prices-by-price = Nach Preis
prices-suggested = { $n ->
    [one] Nach den Kosten genügte ein Preis: { $points }.
   *[other] Nach den Kosten genügten diese wenigen Preise: { $points }.
  }
prices-even = { $n ->
    [one] 1 Stück verdient den Stand von { $stall }, mit { $earned } je Stück, so wie du verkaufst.
   *[other] { $n } Stück verdienen den Stand von { $stall }, mit { $earned } je Stück, so wie du verkaufst.
  }
prices-never-even = Keine Zahl von Stücken verdient den Stand von { $stall }, weil ein Stück mehr kostet, als es bringt.
prices-price = Preis
prices-at = { $n ->
    [one] 1 Art; je Markt { $sold } verkauft
   *[other] { $n } Arten; je Markt { $sold } verkauft
  }
prices-margin = Verdient eines
prices-least = das am wenigsten verdient: { $amount }
prices-each = Stück für Stück
prices-about = Kosten sind Teile nach deinen Posten, Minuten zu deinem Satz und der Anteil am Stand. Ein „?“ steht, wo parts.ron kein Rezept oder keinen Posten hat.
prices-costs = Preis { $price }, kostet { $cost }.
prices-point = Nach den Kosten: { $point }
prices-longest = In der längsten Länge kostet sie { $cost }, zum selben Preis.
prices-no-pieces = „{ $found }“ ist keine Stückzahl; schreib eine ganze Zahl bis 100000.
prices-no-points = „{ $found }“ ist keine Zahl von Preisen; schreib eine von 1 bis { $most }.
prices-no-price = { $why }
prices-no-cost = Was „{ $name }“ kostet, ist nicht bekannt: parts.ron hat kein Rezept oder keinen Posten dafür.
