# The desk in French: what the seller reads of cautions.

# The hazards by their names.
hazard-small_part = petite pièce
hazard-small_ball = petite balle
hazard-magnet = aimant
hazard-coin_cell = pile bouton
hazard-glass = verre
hazard-sharp = coupant ou pointu
hazard-breakaway = ne s’ouvre pas en tirant
hazard-cord_loop = longue boucle
hazard-unknown_metal = métal inconnu
hazard-lead = plomb
hazard-cadmium = cadmium
hazard-nickel = nickel
hazard-paint = peinture
hazard-food_allergen = allergène alimentaire
hazard-looks_like_food = ressemble à un aliment
hazard-liquid = liquide
hazard-heavy_on_child = lourd pour un enfant
hazard-chain_too_short = chaîne trop courte
hazard-bangle_size = taille du bracelet

# What is said to the seller beside a caution; the English stands in the rules and the code as well, and a test holds them together.
seller-for-you = Pour toi :
seller-small-both = L’anneau et le corps entrent dans le cylindre d’essai.
seller-small-drop = L’anneau { $ring ->
    [fits] entre dans le cylindre d’essai
    [measure] est un cas limite : mesure-le au cylindre d’essai
   *[no] n’entre pas dans le cylindre d’essai
  } ; le corps { $body ->
    [fits] entre dans le cylindre d’essai
    [measure] est un cas limite : mesure-le au cylindre d’essai
   *[no] n’entre pas dans le cylindre d’essai
  }.
seller-small-ends = { $size ->
    [fits] Le fermoir ou les anneaux de bout entrent dans le cylindre d’essai.
    [measure] Le fermoir ou les anneaux de bout sont un cas limite : mesure-les au cylindre d’essai.
   *[no] Le fermoir et les anneaux de bout n’entrent pas dans le cylindre d’essai.
  }
seller-small-hoop = { $size ->
    [fits] Le bracelet entier entre dans le cylindre d’essai.
    [measure] C’est un cas limite : mesure-le au cylindre d’essai.
   *[no] Le bracelet lui-même n’entre pas dans le cylindre d’essai.
  }
seller-small-off = { $size ->
    [fits] Ce qui peut se détacher entre dans le cylindre d’essai.
    [near] Ce qui peut se détacher est un cas limite : mesure-le.
    [measure] Ce qui peut se détacher est un cas limite : mesure-le au cylindre d’essai.
   *[no] Ce qui peut se détacher n’entre pas dans le cylindre d’essai.
  }
seller-found-forbidden = Un test a trouvé plus que la règle ne permet ({ $figure }) : il est interdit de le vendre.
seller-found-grave = Un test a trouvé plus que la règle ne permet ({ $figure }) : ne le vends pas pour cette personne.
seller-found = Un test a trouvé plus que ce qui est permis pour les enfants ({ $figure }).
seller-ppm = { $number } ppm
seller-nickel-rate = { $number } µg/cm² par semaine
seller-elsewhere = Un test a montré que la limite d’ici est respectée. Dis ce qui a été trouvé à ceux que cela concerne.
seller-exempt = La règle fait une exception sous ses conditions ({ $why }) ; garde ce qui le prouve.
exempt-CrystalGlass = verre cristal des catégories 1 à 4
exempt-Enamel = émail
exempt-NaturalStone = pierre naturelle
exempt-Before1961 = une pièce d’avant 1961
seller-declared = Le fournisseur le déclare par écrit ({ $paper }, { $day }) ; ce n’est pas un rapport de test. Garde le papier.

# As the rules have it, where nothing was tested and nobody stated anything.
seller-usual-small_part = Pas pour un enfant de moins de 3 ans. De 3 à 5 ans, dis qu’il peut être avalé ; à tous les autres, dis : à tenir loin des enfants de moins de 3 ans.
seller-usual-small_ball = Il n’entre pas dans le cylindre d’essai, mais il a la taille d’une petite balle. Les balles au bout d’un cordon ou d’une boucle comptent aussi : pas pour un enfant de moins de 3 ans.
seller-usual-magnet = À partir de 50, ou si personne ne le sait, il est interdit de le vendre là où il est libre ou peut se détacher. Mesure-le, ou enlève-le de la table.
seller-within-magnet = Il est sous la limite de la règle, mais aucun aimant n’est fait pour un petit enfant, et deux peuvent s’attirer dans le corps. Dis à tous ce que font les aimants avalés, et de les tenir loin des stimulateurs cardiaques.
seller-usual-coin_cell = Essaie le couvercle avant de le remettre. Dis qu’une pile avalée est une urgence : il faut une aide médicale tout de suite.
seller-usual-glass = Dis que c’est du verre et qu’il peut casser. Pas pour un enfant de moins de 3 ans.
seller-usual-sharp = Montre la pointe ou l’arête. La règle s’arrête à 8 ans, entre 6 et 12 : pas pour un enfant de 12 ans ou moins.
seller-usual-breakaway = Cette chaîne tient quand on tire dessus. Dis qu’un enfant l’enlève pour jouer et dormir.
seller-within-breakaway = Elle s’ouvre quand on tire fort. Les voies respiratoires d’un petit enfant se ferment pour bien moins : dis qu’elle s’enlève pour jouer et dormir. Les colliers ne sont pas recommandés avant 3 ans.
seller-usual-cord_loop = La mesure vaut pour les enfants de moins de 3 ans ; une boucle plus longue s’accroche plus facilement à tout âge. Plus court coûte autant.
seller-usual-unknown_metal = Dis que personne n’a testé ce métal. Ne le vends pas pour un enfant de 12 ans ou moins : les enfants mettent les choses à la bouche.
seller-usual-lead = Le laiton, le métal coulé, le plaqué et le cristal contiennent souvent du plomb ; sans test, ne le vends pas pour un enfant de 12 ans ou moins.
seller-proof-lead = Le laiton, le métal coulé, le plaqué et le cristal contiennent souvent du plomb ; sans test, ou sans preuve d’une exception, ne le vends pas pour un enfant de 12 ans ou moins.
seller-usual-cadmium = Le cadmium est courant dans le métal coulé bon marché ; sans test, ne le vends pas pour un enfant de 12 ans ou moins.
seller-usual-nickel = Demande s’il y a une allergie au nickel. Sans test, personne ne peut dire combien de nickel il libère.
seller-usual-paint = Sans test de la peinture, ne le vends pas pour un enfant de 12 ans ou moins.
seller-usual-food_allergen = Dis que ce n’est plus un aliment, et quels allergènes il contient.
seller-usual-looks_like_food = Dis que ça ne se mange pas. Pas pour un enfant de 5 ans ou moins.
seller-usual-liquid = Dis ce qu’il y a dedans, et que ça ne se boit pas. Pas pour un enfant de moins de 3 ans.
seller-usual-heavy_on_child = Propose d’enlever une breloque.
seller-usual-chain_too_short = Mesure le cou. Une chaîne plus longue coûte autant.
seller-usual-bangle_size = Fais-le essayer, ou mesure la main autour des jointures.
