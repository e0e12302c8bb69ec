# The desk in French: a tray by one photo.

photo-busy = On travaille en ce moment sur une autre photo. Renvoie la tienne dans un instant.
tray-photo-title = Le plateau { $letter } en une photo
tray-photo-how = Photographie le plateau bien d’en haut, avec ses quatre coins intérieurs dans l’image, sous une lumière égale et sans flash. Une seule sorte par case, en petit nombre et sans que rien ne se chevauche.
tray-photo-take = Prendre la photo maintenant
tray-photo-choose = Ou en choisir une qui existe déjà
tray-photo-send = Lire la photo
tray-photo-stays-here = La photo reste sur cet ordinateur, sans le lieu où elle a été prise, jusqu’à ce que ses images soient sur la table ou que tu la jettes.
tray-photo-begun = Photos commencées
tray-photo-of = Continuer avec la photo de { $time }
tray-photo-none = Choisis d’abord une photo.
tray-photo-gone = cette photo n’est plus là ; reprends-la
tray-photo-no-corners = Les quatre coins ne forment pas un plateau : place-les l’un après l’autre tout autour.
tray-photo-no-grid = Une photo montre au plus 30 rangées et colonnes, et 300 cases. Partage le plateau en deux.
tray-photo-no-width = Tape la largeur intérieure du plateau en millimètres, de 40 à 2000.
tray-photo-no-number = Un coin se trouve entre 0 et 100 pour cent de la photo.
tray-photo-corners = Les coins du plateau { $letter }
tray-photo-found = Les coins ont été trouvés. Fais-les glisser là où ils ne sont pas justes.
tray-photo-not-found = Les coins n’ont pas été trouvés. Fais glisser chacun sur un coin intérieur du plateau.
tray-photo-turn = Tourner d’un quart
tray-photo-turn-hint = jusqu’à ce que { $home } soit dans sa case
tray-photo-width = Largeur intérieure du plateau, de gauche à droite, en millimètres
tray-photo-cut = Tout détourer
tray-photo-by-number = Les coins en chiffres
tray-photo-across = Coin { $n } : depuis la gauche, en pour cent
tray-photo-down = Coin { $n } : depuis le haut, en pour cent
tray-photo-seen = La photo, avec les parois du plateau dessinées par-dessus
tray-photo-throw-away = Jeter cette photo
tray-photo-pieces = Ce que montre le plateau { $letter }
tray-photo-tally = { $cut } images détourées, { $tiles } en cartes.
tray-photo-nothing-seen = Rien n’a été vu dans aucune case. Replace les coins, ou prends une autre photo.
tray-photo-take-all = Tout prendre ainsi
tray-photo-mend-hint = Touche celle qui n’est pas juste.
tray-photo-corners-again = Replacer les coins
tray-photo-stays = reste comme elle est
tray-photo-empty = rien de vu
tray-photo-tile = en carte
tray-photo-whole = case entière
tray-photo-mix = { $n ->
    [0] un mélange, rien de séparé
   *[other] un mélange, { $n } séparés
  }
tray-photo-sure = sûr
tray-photo-unsure = pas sûr
tray-photo-mend = L’image de { $home }
tray-photo-mend-head = son image
tray-photo-strokes = Passe le doigt sur ce qui manque pour le garder, ou sur ce qui est en trop pour l’enlever.
tray-photo-strokes-do = Ce que fait un trait
tray-photo-keep = Garder
tray-photo-drop = Enlever
tray-photo-stroke-back = Effacer le dernier trait
tray-photo-whole-seen = La case telle qu’elle est sur la photo, où passer le doigt
tray-photo-cut-again = Détourer de nouveau
tray-photo-as-cut = Détourée
tray-photo-as-tile = En carte
tray-photo-as-whole = Case entière
tray-photo-as-mix = En mélange
tray-photo-as-nothing = Pas d’image d’ici
tray-photo-nothing-left = Il n’en reste rien. Efface un trait, ou garde-la en carte.
tray-photo-no-strokes = Passe d’abord le doigt sur l’image.
tray-photo-prices = Les prix du plateau { $letter }
tray-photo-priced = { $n } sur { $of } ont un prix.
tray-photo-has-price = a un prix
tray-photo-all-priced = { $n ->
    [0] Rien ici n’a besoin d’un prix.
   *[other] Les { $n } ont un prix.
  }
tray-photo-same-price = { $price } encore
tray-photo-leave-out = Laisser { $home } vide
tray-photo-to-pieces = Vers les images
tray-photo-lay = { $n ->
    [one] La poser sur la table
   *[other] Poser les { $n } sur la table
  }
table-did-photo = { $n ->
    [one] 1 image d’une photo du plateau { $letter }
   *[other] { $n } images d’une photo du plateau { $letter }
  }
named-name = { $sort } { $colour }
named-name-sized = { $size } { $sort } { $colour }
named-mix = Pendentifs mélangés
named-gender-Charm = m
named-gender-Bead = f
named-gender-Vial = f
named-gender-Locket = m
named-gender-Key = f
named-gender-Crystal = m
named-gender-Tassel = m
named-gender-Found = f
named-small = { $gender ->
    [f] petite
    [n] petit
   *[m] petit
  }
named-large = { $gender ->
    [f] grande
    [n] grand
   *[m] grand
  }
named-colour-Golden = { $gender ->
    [f] dorée
    [n] doré
   *[m] doré
  }
named-colour-Silvery = { $gender ->
    [f] argentée
    [n] argenté
   *[m] argenté
  }
named-colour-Coppery = { $gender ->
    [f] cuivrée
    [n] cuivré
   *[m] cuivré
  }
named-colour-Clear = { $gender ->
    [f] transparente
    [n] transparent
   *[m] transparent
  }
named-colour-White = { $gender ->
    [f] blanche
    [n] blanc
   *[m] blanc
  }
named-colour-Black = { $gender ->
    [f] noire
    [n] noir
   *[m] noir
  }
named-colour-Red = { $gender ->
    [f] rouge
    [n] rouge
   *[m] rouge
  }
named-colour-Pink = { $gender ->
    [f] rose
    [n] rose
   *[m] rose
  }
named-colour-Orange = { $gender ->
    [f] orange
    [n] orange
   *[m] orange
  }
named-colour-Yellow = { $gender ->
    [f] jaune
    [n] jaune
   *[m] jaune
  }
named-colour-Green = { $gender ->
    [f] verte
    [n] vert
   *[m] vert
  }
named-colour-Blue = { $gender ->
    [f] bleue
    [n] bleu
   *[m] bleu
  }
named-colour-Violet = { $gender ->
    [f] violette
    [n] violet
   *[m] violet
  }
named-colour-Brown = { $gender ->
    [f] marron
    [n] marron
   *[m] marron
  }
