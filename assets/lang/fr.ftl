# La borne de Chatelaine en français.
back = Retour
ok = D’accord
close = Fermer
languages = Langue
looks = Texte et couleurs
looks-text = Taille du texte
looks-usual = Normale
looks-large = Grande
looks-largest = Très grande
looks-contrast = Couleurs
looks-daylight = Lumière du jour
looks-high = Contraste élevé
looks-motion = Mouvement
looks-lively = Avec mouvement
looks-calm = Sans mouvement
desk-away = La caisse est injoignable ; vous pouvez continuer.
sold-out = Épuisé
tray = Plateau { $letter }

welcome-unnamed = Créez votre bijou
welcome-not-paired = Cette tablette n’appartient encore à aucune caisse. Vendeur : maintenez le coin supérieur gauche de l’écran, puis choisissez « Associer à une caisse ».
welcome-no-catalogue = En attente du catalogue de la caisse. Vendeur : vérifiez que la caisse fonctionne et se trouve sur le même réseau.
welcome-invitation = Créez votre collier ou votre bracelet. Voyez l’allure et le prix, et changez autant que vous voulez.
welcome-begin = Touchez pour commencer
put-back = Où va ceci ?
put-back-hint = Touchez la photo de la breloque que vous avez trouvée.

base-title = Choisissez la base
base-onward = Vers les breloques
base-shorter = Plus court
base-longer = Plus long
base-unfit = Pas pour cet âge
base-left-off-title = Des breloques sont reparties
base-left-off = { $n ->
    [one] Une breloque ne passe pas sur cette base. Elle est revenue dans sa case.
   *[other] { $n } breloques ne passent pas sur cette base. Elles sont revenues dans leurs cases.
  }
falls-throat = près de la gorge
falls-neck = à la base du cou
falls-collarbone = sur la clavicule
falls-below-collarbone = juste sous la clavicule
falls-breastbone = sur le sternum
falls-low = sous le sternum

stage-undo = Annuler
stage-redo = Rétablir
stage-anew = Recommencer
stage-surprise = Surprenez-moi
stage-no-surprise = Rien de ce qui reste ne convient. Affichez plus de breloques ou augmentez le budget.
stage-to-left = Une place à gauche
stage-to-right = Une place à droite
stage-take-off = Enlever
stage-nearer = Voir de près
stage-whole = Voir la pièce entière
stage-true-size = Voir en taille réelle
stage-usual-size = Quitter la taille réelle
stage-hint = Touchez une breloque ou glissez-la vers la chaîne.
stage-review = Vérifier
stage-no-room-title = Plus de place
stage-no-room = { $n ->
    [one] Une seule breloque tient sur cette base. Enlevez-en une ou prenez une base plus longue.
   *[other] { $n } breloques tiennent sur cette base. Enlevez-en une ou prenez une base plus longue.
  }
trouble-too-short = Cette longueur est trop courte pour ce cou. Choisissez-en une plus longue.
trouble-other = Cette pièce ne peut pas être faite ainsi. Changez la base ou enlevez une breloque.
rows-before = Rangs précédents
rows-after = Autres rangs

why-sold-out-title = Épuisé
why-sold-out = { $name } : tout est pris, ou pend déjà à votre pièce.
why-too-dear-title = Au-delà de votre budget
why-too-dear = Avec { $name }, la pièce coûterait plus que votre budget. Enlevez quelque chose ou changez le budget.
why-not-for-title = Pas pour cet âge
why-no-fit-title = L’anneau est trop petit
why-no-fit = L’anneau de { $name } ouvre { $opens } mm ; cette base demande { $needs } mm. Une autre base pourra convenir.

filters = Afficher
filters-title = Que voulez-vous voir ?
filters-any = Tout
filters-clear = Tout afficher
filters-show = Terminé
filters-budget = J’ai
filters-suits = Qui conviennent
filters-sort = Genre
filters-colour = Couleur
filters-finish = Métal

sort-Charm = Breloques
sort-Bead = Perles
sort-Vial = Fioles
sort-Locket = Médaillons
sort-Key = Clés
sort-Crystal = Cristaux
sort-Tassel = Pompons
sort-Found = Trouvailles
colour-Golden = doré
colour-Silvery = argenté
colour-Coppery = cuivré
colour-Clear = transparent
colour-White = blanc
colour-Black = noir
colour-Red = rouge
colour-Pink = rose
colour-Orange = orange
colour-Yellow = jaune
colour-Green = vert
colour-Blue = bleu
colour-Violet = violet
colour-Brown = brun
finish-AntiqueBrass = laiton vieilli
finish-AntiqueSilver = argent vieilli
finish-Copper = cuivre
finish-Gold = or
finish-Silver = argent
finish-Gunmetal = gris canon
finish-Steel = acier

wearer-ask = Pour qui est-ce ?
wearer-ask-short = Pour qui ?
wearer-why = Certaines pièces sont dangereuses pour les petits enfants. Rien d’autre n’est demandé.
wearer-under3 = Moins de 3 ans
wearer-from3to5 = De 3 à 5 ans
wearer-from6to12 = De 6 à 12 ans
wearer-from13 = 13 ans ou plus
wearer-unknown = Non précisé

lines-title = Le prix
lines-subtotal = Ensemble
lines-discount = Remise
lines-tax = Taxe
lines-tax-inside = Taxe comprise
lines-total = Total

caution-title = Bon à savoir
caution-count = { $n ->
    [one] { $n } alerte
   *[other] { $n } alertes
  }
caution-none = Rien de particulier à surveiller.
caution-deferral = Un guide, pas un rapport d’essai ; les règles locales et une évaluation de sécurité qualifiée font foi.
caution-small_part = { $name } est une petite pièce. Un enfant de moins de 3 ans peut s’étouffer avec.
caution-small_part-base = Le fermoir et les anneaux de { $name } sont de petites pièces. Un enfant de moins de 3 ans peut s’étouffer avec.
caution-small_ball = Risque d’étouffement : { $name } a la taille d’une petite balle. Un enfant de moins de 3 ans peut s’étouffer avec.
caution-magnet = { $name } contient un aimant. Avalés, les aimants peuvent blesser gravement ; à tenir loin des enfants.
caution-coin_cell = { $name } contient une pile bouton. Avalée, elle brûle en quelques heures ; à tenir loin des enfants.
caution-glass = { $name } est en verre et peut se briser en éclats coupants.
caution-sharp = { $name } a un bord ou une pointe acérés.
caution-breakaway = Ce collier ne se défait pas quand on tire. Enlève-le à un jeune enfant pour jouer et dormir.
caution-cord_loop = Une boucle aussi longue peut s’accrocher. Surveille le jeune enfant qui la porte.
caution-unknown_metal = { $name } contient du métal jamais contrôlé : plomb, cadmium ou nickel possibles.
caution-lead = { $name } peut contenir du plomb ; aucun contrôle n’a été fait.
caution-lead-found = { $name } contient plus de plomb que la règle ne le permet.
caution-cadmium = { $name } peut contenir du cadmium ; aucun contrôle n’a été fait.
caution-cadmium-found = { $name } contient plus de cadmium que la règle ne le permet.
caution-nickel = { $name } peut libérer du nickel ; aucun contrôle n’a été fait. À ne pas porter en cas d’allergie au nickel.
caution-nickel-found = { $name } libère plus de nickel que la règle ne le permet.
caution-food_allergen = { $name } est une décoration, à ne pas manger. Allergènes inconnus : à ne pas porter en cas d’allergie alimentaire.
caution-food_allergen-known = { $name } est une décoration, à ne pas manger. Contient : { $allergens }. À ne pas porter en cas d’allergie à l’un d’eux.
caution-heavy_on_child = Avec ses breloques, le collier pèse { $number } g, c’est beaucoup pour un jeune cou.
caution-chain_too_short = Il manque environ { $number } mm à ce collier pour faire le tour du cou.
unsuitable-under3 = Cette pièce n’est pas pour un enfant de moins de 3 ans.
unsuitable-child = Cette pièce n’est pas pour un enfant de cet âge.
unsuitable-anyone = Une partie de cette pièce ne doit pas être portée telle quelle. À voir avec le stand.
unsuitable-unknown = Une partie de cette pièce ne convient pas à tous les enfants. Pour qui est-elle ?
unsuitable-base = Une autre base ou longueur
unsuitable-change = Changer pour qui
unsuitable-show = Voir ce qui convient
unsuitable-back = Retour aux breloques
grown-up = Je suis adulte et j’ai lu ceci.

allergen-Milk = lait
allergen-Egg = œuf
allergen-Fish = poisson
allergen-Crustaceans = crustacés
allergen-TreeNuts = fruits à coque
allergen-Peanuts = arachides
allergen-Wheat = blé
allergen-Soybeans = soja
allergen-Sesame = sésame
allergen-Gluten = gluten
allergen-Celery = céleri
allergen-Mustard = moutarde
allergen-Sulphites = sulfites
allergen-Lupin = lupin
allergen-Molluscs = mollusques
month-1 = janvier
month-2 = février
month-3 = mars
month-4 = avril
month-5 = mai
month-6 = juin
month-7 = juillet
month-8 = août
month-9 = septembre
month-10 = octobre
month-11 = novembre
month-12 = décembre
date-month = { $month } { $year }
date-day = { $n ->
    [1] { $n }er { $month } { $year }
   *[other] { $n } { $month } { $year }
  }
dated-not_noted = date non notée
dated-as_of = texte en date de : { $day }
dated-of = date : { $day }
dated-in_force = en vigueur depuis : { $day }
dated-applies = applicable à partir de : { $day }
dated-made_after = pour ce qui est fabriqué après : { $day }
dated-edition = édition { $edition }
status-read = lu
status-second_hand = de seconde main
status-from_memory = de mémoire
status-practice = usage courant, sans source

review-title = Votre pièce
review-send = Envoyer à la caisse
review-sending = Envoi…
send-failed-title = Pas envoyée
send-not-paired = Cette tablette n’appartient encore à aucune caisse. Votre pièce reste ici ; demandez au vendeur.
send-no-numbers = Cette tablette n’a plus de numéro. Votre pièce reste ici ; demandez au vendeur.
send-disk = La tablette ne peut pas garder votre pièce pour l’instant. Elle reste à l’écran ; montrez-la au vendeur.
send-refused = La caisse n’a pas pu prendre la pièce. Elle reste à l’écran ; montrez-la au vendeur.
send-short-title = Quelqu’un a été plus rapide
send-short = { $names } : le dernier exemplaire vient de partir. Le reste de votre pièce est là ; choisissez à nouveau.

sent-title = Votre numéro
sent-next = Allez à la caisse. À l’appel de votre numéro, votre pièce sera montée.
sent-kept = Votre pièce est gardée sur cette tablette et sera transmise à la caisse. Votre numéro est bon.
sent-short = Une des breloques manque peut-être ; la caisse vous aidera à choisir.
sent-homes = Où vos breloques se trouvent sur la table
sent-done = Terminé

anew-title = Recommencer ?
anew-text = Votre pièce est effacée et vous repartez d’une base vide.
anew-keep = Garder ma pièce
anew-yes = Recommencer
idle-title = Toujours là ?
idle-text = Sans réponse, votre pièce est effacée.
idle-here = Je suis là

seller-title = Pour le vendeur
seller-asking = La caisse est interrogée…
seller-language = Langue d’un nouveau client
seller-hand = Plateaux
seller-right-handed = Plateaux à droite
seller-left-handed = Plateaux à gauche
seller-looks = Aspect de l’écran pour un nouveau client
seller-screen = Taille de l’écran
seller-measured = Un millimètre fait { $px } pixels. Les clients peuvent voir leur création en taille réelle.
seller-not-measured = Pas encore mesurée.
seller-card = Comparer à une carte bancaire
card-ask = Posez une carte bancaire sur la carte dessinée, coins supérieurs gauches ensemble. Donnez la même taille à la carte dessinée.
card-much-smaller = Beaucoup plus petite
card-smaller = Plus petite
card-larger = Plus grande
card-much-larger = Beaucoup plus grande
card-same = Même taille
seller-desk = Caisse
seller-paired = Associée à { $desk }, borne { $digit }.
seller-not-paired = Associée à aucune caisse.
seller-waiting = { $n ->
    [0] Aucun ticket en attente.
    [one] Un ticket attend d’être transmis.
   *[other] { $n } tickets attendent d’être transmis.
  }
seller-pair = Associer à une caisse
seller-leave = Quitter la borne
seller-not-kept = Les réglages valent jusqu’à l’arrêt de la tablette ; son disque ne les a pas pris.
pin-ask = Code PIN du vendeur
pin-wrong = Ce n’est pas le code PIN.
pin-wait = Trop d’essais. Attendez { $seconds } secondes.
pin-away = La caisse est injoignable et cette tablette ne connaît pas encore le code PIN.
pair-address = Adresse de la caisse
pair-code = Code affiché à la caisse
pair-done = Associée. C’est la borne { $digit }.
key-erase = Effacer
key-enter = Valider
