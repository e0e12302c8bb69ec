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
desk-away = La caisse ne répond pas ; tu peux continuer.
disk-nearly-full = Tablette presque pleine : préviens le vendeur.
let-go = Cette tablette ne peut plus donner de numéro ; préviens la caisse.
practice = Entraînement : rien ne compte
mix-named = { $name }, un de { $home }
mix-one = un de { $home }
mix-note = { $homes } : un mélange, le tien peut être différent.
sold-out = Épuisé
tray = Plateau { $letter }

welcome-unnamed = Crée ton bijou
welcome-not-paired = Cette tablette n’appartient encore à aucune caisse. Pour le vendeur : maintiens le coin supérieur gauche de l’écran, puis choisis « Associer à une caisse ».
welcome-no-catalogue = Le catalogue de la caisse n’est pas encore là. Pour le vendeur : vérifie que la caisse est en marche et sur le même réseau.
welcome-being-laid = Cette table est encore en préparation. Reviens dans un petit moment.
welcome-invitation = Crée ton collier ou ton bracelet. Vois tout de suite l’allure et le prix, et change autant que tu veux.
welcome-begin = Touche pour commencer
seat-come = À table, s’il te plaît
seat-from-to = Une place à la table : { $from } à { $to } min
seat-up-to = Une place à la table : jusqu’à { $to } min
put-back = Où ranger ça ?
put-back-hint = Touche la photo de la breloque que tu as trouvée.
thread = J’ai un numéro
thread-ask = Tape le numéro du ticket
thread-asking = On cherche…
thread-no-number = Un chiffre est faux. Regarde encore le numéro.
thread-unknown = Aucun bijou n’a ce numéro.
thread-away = La caisse est hors de portée. Essaie sur la tablette où le bijou a été fait.
thread-collect = Rassemble tout et enfile-le comme sur l’image
thread-collected = { $n } sur { $of }
thread-done = Terminé

base-title = Choisis ta base
base-onward = Choisir les breloques
base-shorter = Plus court
base-longer = Plus long
base-unfit = Pas pour cet âge
base-closes = se ferme jusqu’à { $neck } de tour de cou
base-neck = Cou : { $neck }
base-neck-ask = Tour de cou
neck-title = Quel est le tour de cou ?
neck-why = Mesure-le là où sera la chaîne. Il ne sert que pour ce bijou.
neck-unknown = Pas mesuré
not-to-be-worn = À ne pas porter
base-left-off-title = De retour dans la case
base-left-off = { $n ->
    [one] Une breloque ne va pas sur cette base. Elle est de retour dans sa case.
   *[other] { $n } breloques ne vont pas sur cette base. Elles sont de retour dans leurs cases.
  }
falls-throat = au ras du cou
falls-neck = à la base du cou
falls-collarbone = sur la clavicule
falls-below-collarbone = juste sous la clavicule
falls-breastbone = sur le sternum
falls-low = sous le sternum

stage-undo = Annuler
stage-redo = Rétablir
stage-anew = Recommencer
stage-surprise = Surprends-moi
stage-no-surprise = Rien de ce qui reste ne correspond à tes souhaits. Affiche plus de breloques ou augmente le budget.
stage-to-left = Une place à gauche
stage-to-right = Une place à droite
stage-take-off = Enlever
stage-nearer = Voir de près
stage-whole = Voir le bijou entier
stage-true-size = Voir en taille réelle
stage-usual-size = Quitter la taille réelle
stage-hint = Touche une breloque ou glisse-la sur la base.
stage-review = Voir mon bijou
stage-no-room-title = Plus de place
stage-no-room = { $n ->
    [one] Une seule breloque tient sur cette base. Enlève-la ou prends une base plus longue.
   *[other] { $n } breloques tiennent sur cette base. Enlèves-en une ou prends une base plus longue.
  }
stage-no-room-at-all = { $n ->
    [one] Une seule breloque tient sur cette base. Enlèves-en une ou choisis une autre base.
   *[other] Seules { $n } breloques tiennent sur cette base. Enlèves-en une ou choisis une autre base.
  }
trouble-too-short = Cette longueur est trop courte pour ce cou. Choisis-en une plus longue.
trouble-other = Ce bijou ne peut pas être fait ainsi. Change de base ou enlève une breloque.
rows-before = Rangées précédentes
rows-after = Rangées suivantes

why-sold-out-title = Épuisé
why-sold-out = « { $name } » : il n’y en a plus sur la table, ou tout est déjà sur ton bijou.
why-too-dear-title = Au-delà de ton budget
why-too-dear = Avec « { $name } », le bijou dépasserait ton budget. Enlève quelque chose ou augmente le budget.
why-not-for-title = Pas pour cet âge
why-no-fit-title = L’anneau est trop petit
why-no-fit = « { $name } » : l’anneau a une ouverture de { $opens } mm ; il faut { $needs } mm pour cette base. Une autre base conviendra peut-être.

filters = Chercher
filters-title = Que veux-tu voir ?
filters-any = Tout
filters-clear = Tout afficher
filters-show = Terminé
filters-budget = J’ai
filters-price = Chacun coûte au plus
filters-up-to = jusqu’à { $sum }
filters-have = J’ai { $sum }
filters-end = Ne plus chercher :
filters-sort = Type
filters-colour = Couleur
filters-finish = Métal

sort-Charm = Motifs
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
finish-AntiqueSilver = couleur argent vieilli
finish-Copper = cuivre
finish-Gold = couleur or
finish-Silver = couleur argent
finish-Gunmetal = gris canon
finish-Steel = acier

wearer-ask = C’est pour qui ?
wearer-ask-short = Pour qui ?
wearer-why = Certaines breloques sont dangereuses pour les jeunes enfants. On ne te demande rien d’autre.
wearer-under3 = Moins de 3 ans
wearer-from3to5 = De 3 à 5 ans
wearer-from6to12 = De 6 à 12 ans
wearer-from13 = 13 ans ou plus
wearer-unknown = Non précisé

lines-title = Le prix
lines-subtotal = Sous-total
lines-discount = Remise
lines-tax = Taxe
lines-tax-inside = Taxe comprise
tag-with-tax = taxe comprise
lines-total = Total

caution-title = Bon à savoir
caution-count = { $n ->
    [one] { $n } alerte
   *[other] { $n } alertes
  }
caution-none = Aucun point de vigilance n’a été trouvé.
caution-deferral = Un guide, pas un rapport de test ; les règles locales et une évaluation de sécurité qualifiée font foi.
caution-small_part = Petites pièces : un enfant de moins de 3 ans peut s’étouffer avec.
caution-small_part-away = Petites pièces : à tenir loin des enfants de moins de 3 ans.
caution-small_ball = Risque d’étouffement : de la taille d’une petite balle. Un enfant de moins de 3 ans peut s’étouffer avec.
caution-magnet = Un aimant puissant. Avalés, les aimants peuvent blesser gravement : à tenir loin des enfants et des pacemakers.
caution-magnet-unknown = Un aimant, et personne ne sait s’il est puissant. Avalés, les aimants peuvent blesser gravement : à tenir loin des enfants et des pacemakers.
caution-magnet-within = Un aimant faible. Avalé, un aimant peut blesser : surveille l’enfant qui le porte et tiens l’aimant loin des pacemakers.
caution-magnet-together = Plusieurs aimants. Avalés, ils peuvent s’attirer dans le corps et blesser gravement : à tenir loin des enfants et des pacemakers.
caution-coin_cell = Une pile bouton : à tenir loin des enfants. Avalée, elle cause des brûlures en quelques heures : consulte un médecin ou les urgences immédiatement.
caution-glass = Verre : il peut se briser en éclats coupants.
caution-sharp = Un bord coupant ou une pointe acérée.
caution-breakaway = Ne se détache pas quand on tire dessus : enlève-le à un enfant quand il joue ou dort. Déconseillé avant 3 ans.
caution-breakaway-apart = Se détache quand on tire fort, mais cela peut ne pas suffire : enlève-le à un jeune enfant quand il joue ou dort. Déconseillé avant 3 ans.
caution-cord_loop = Une longue boucle peut s’accrocher : surveille l’enfant qui la porte.
caution-unknown_metal = Personne ne sait quel métal c’est : il n’a pas été testé pour le plomb, le cadmium et le nickel.
caution-unknown_metal-declared = Personne ne sait quel métal c’est. Son fournisseur déclare par écrit que les limites de plomb, de cadmium et de nickel sont respectées ; il n’a pas été testé.
caution-lead = Peut contenir du plomb ; cela n’a pas été testé.
caution-lead-declared = Peut contenir du plomb ; son fournisseur déclare par écrit que la limite est respectée. Cela n’a pas été testé.
caution-lead-found = Un test a révélé { $number } ppm de plomb, au-delà de la limite de { $limit }.
caution-lead-elsewhere = Un test a révélé { $number } ppm de plomb : dans la limite de { $limit } qui vaut ici, mais plus que certaines règles ne le permettent pour les enfants.
caution-lead-children = Un test a révélé { $number } ppm de plomb : au-delà de la limite de { $limit } pour les enfants. Nous ne connaissons pas de limite pour cet âge.
caution-lead-exempt = Un test a révélé { $number } ppm de plomb. La règle fait ici une exception à sa limite de { $limit }.
caution-cadmium = Peut contenir du cadmium ; cela n’a pas été testé.
caution-cadmium-declared = Peut contenir du cadmium ; son fournisseur déclare par écrit que la limite est respectée. Cela n’a pas été testé.
caution-cadmium-found = Un test a révélé { $number } ppm de cadmium, au-delà de la limite de { $limit }.
caution-cadmium-elsewhere = Un test a révélé { $number } ppm de cadmium : dans la limite de { $limit } qui vaut ici, mais plus que certaines règles ne le permettent pour les enfants.
caution-cadmium-children = Un test a révélé { $number } ppm de cadmium : au-delà de la limite de { $limit } pour les enfants. Nous ne connaissons pas de limite pour cet âge.
caution-nickel = Peut libérer du nickel ; cela n’a pas été testé. À ne pas porter en cas d’allergie au nickel.
caution-nickel-declared = Peut libérer du nickel ; son fournisseur déclare par écrit que la limite est respectée. Cela n’a pas été testé. À ne pas porter en cas d’allergie au nickel.
caution-nickel-found = Un test a révélé { $number } µg/cm² de nickel libéré par semaine, au-delà de la limite de { $limit }. À ne pas porter en cas d’allergie au nickel.
caution-nickel-elsewhere = Un test a révélé { $number } µg/cm² de nickel libéré par semaine : dans la limite de { $limit } qui vaut ici, mais plus que certaines règles ne le permettent pour les enfants. À ne pas porter en cas d’allergie au nickel.
caution-nickel-children = Un test a révélé { $number } µg/cm² de nickel libéré par semaine : au-delà de la limite de { $limit } pour les enfants. Nous ne connaissons pas de limite pour cet âge. À ne pas porter en cas d’allergie au nickel.
caution-paint = Sa peinture peut contenir du plomb ; cela n’a pas été testé.
caution-paint-declared = Sa peinture peut contenir du plomb ; son fournisseur déclare par écrit que la limite est respectée. Cela n’a pas été testé.
caution-paint-found = Un test a révélé { $number } ppm de plomb dans la peinture, au-delà de la limite de { $limit }.
caution-paint-elsewhere = Un test a révélé { $number } ppm de plomb dans la peinture : dans la limite de { $limit } qui vaut ici, mais plus que certaines règles ne le permettent pour les enfants.
caution-paint-children = Un test a révélé { $number } ppm de plomb dans la peinture : au-delà de la limite de { $limit } pour les enfants. Nous ne connaissons pas de limite pour cet âge.
caution-food_allergen = Une décoration, à ne pas manger. Ses allergènes ne sont pas connus : à ne pas porter en cas d’allergie alimentaire.
caution-food_allergen-known = Une décoration, à ne pas manger. Contient : { $allergens }. À ne pas porter en cas d’allergie à l’un de ces allergènes.
caution-looks_like_food = Ressemble à un aliment, mais à ne pas manger : un enfant peut le prendre pour un aliment et s’étouffer avec.
caution-liquid = Contient un liquide : cela peut se casser ou fuir. À ne pas boire.
caution-heavy_on_child = Pèse { $number } g avec ses breloques, c’est beaucoup pour le cou d’un enfant.
caution-chain_too_short = Se ferme jusqu’à { $number } mm de tour de cou : mesure le cou.
caution-chain_too_short-own = Se ferme jusqu’à { $number } mm de tour de cou ; tu as indiqué { $limit } mm.
caution-bangle_size = Passe jusqu’à { $number } mm de tour de main : mesure la main.
caution-bangle_size-slips = Fait { $number } mm de tour à l’intérieur et peut glisser de la main.
unsuitable-under3 = Ce bijou n’est pas pour un enfant de moins de 3 ans.
unsuitable-child = Ce bijou n’est pas pour un enfant de cet âge.
unsuitable-anyone = Une partie de ce bijou ne doit pas être portée telle quelle. Demande au vendeur.
unsuitable-forbidden = Une partie de ce bijou est interdite à la vente. Demande au vendeur.
unsuitable-nothing = Rien sur cette table ne convient. Demande au vendeur.
unsuitable-unknown = Une partie de ce bijou ne convient pas à tous les enfants. Pour qui est-il ?
unsuitable-base = Une autre base ou longueur
unsuitable-change = Pour quelqu’un d’autre
unsuitable-show = Voir ce qui convient
unsuitable-back = Retour aux breloques
grown-up = Je suis adulte et j’ai tout lu.
grown-up-read = { $n ->
    [one] Lis d’abord l’alerte
   *[other] Lis d’abord les { $n } alertes
  }

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

review-title = Ton bijou
review-send = Envoyer à la caisse
review-sending = Envoi…
send-failed-title = Pas envoyé
send-not-paired = Cette tablette n’appartient encore à aucune caisse. Ton bijou reste ici ; demande au vendeur.
send-let-go = La caisse ne connaît plus cette tablette, qui ne peut donc pas donner de numéro. Ta pièce reste ici ; demande à la caisse.
send-practice-over = L’entraînement vient de se terminer, et ta pièce n’a pas été envoyée. Envoie-la encore une fois : à partir de maintenant, elle compte.
send-no-numbers = Cette tablette n’a plus de numéro à donner. Ton bijou reste ici ; demande au vendeur.
send-disk = La tablette n’arrive pas à garder ton bijou pour l’instant. Il reste à l’écran ; montre-le au vendeur.
send-refused = La caisse n’a pas pu prendre le bijou. Il reste à l’écran ; montre-le au vendeur.
send-short-title = Quelqu’un a été plus rapide
send-short = { $names } : le dernier exemplaire vient de partir. Le reste de ton bijou est là ; choisis à nouveau.

sent-title = Ton numéro
sent-next = Va à la caisse. À l’appel de ton numéro, ton bijou sera monté.
sent-thread = Va chercher tes breloques dans leurs compartiments et enfile-les. Apporte ensuite ton bijou à la caisse. Avec ton numéro, chaque tablette montre de nouveau cette liste.
sent-kept = Ton bijou est gardé sur cette tablette et sera transmis à la caisse. Ton numéro est valable.
sent-short = Il manque peut-être une des breloques ; à la caisse, on t’aidera à choisir.
sent-refused = La caisse n’a pas pu prendre ton ticket. Va la voir avec ton numéro ; il peut encore y être enregistré.
sent-homes = Où se trouvent tes breloques sur la table
sent-done = Terminé

anew-title = Recommencer ?
anew-text = Ton bijou est effacé et tu repars d’une base vide.
anew-keep = Garder mon bijou
anew-yes = Recommencer
idle-title = Toujours là ?
idle-text = Sans réponse, ton bijou sera effacé.
idle-here = Je suis là

seller-title = Pour le vendeur
seller-asking = On demande à la caisse…
seller-language = Langue pour un nouveau client
seller-hand = Plateaux
seller-right-handed = Plateaux à droite
seller-left-handed = Plateaux à gauche
seller-looks = Aspect de l’écran pour un nouveau client
seller-screen = Taille de l’écran
seller-measured = Un millimètre fait { $px } pixels. Les clients peuvent voir leur bijou en taille réelle.
seller-not-measured = Pas encore mesurée.
seller-card = Comparer à une carte bancaire
card-ask = Pose une carte bancaire sur la carte dessinée, coin supérieur gauche sur coin supérieur gauche. Donne exactement la même taille à la carte dessinée.
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
seller-let-go = La caisse ne connaît plus cette tablette : elle ne donne pas de numéro avant d’être associée de nouveau.
seller-aside = { $n ->
    [one] La caisse n’a pas pris un ticket ; sa page « Tablettes » le montre.
   *[other] La caisse n’a pas pris { $n } tickets ; sa page « Tablettes » les montre.
  }
seller-open-desk = Ouvrir la caisse ici
seller-phone = Ou ouvre la caisse sur un téléphone du même réseau : vise ceci avec son appareil photo.
seller-desk-not-opened = Aucun navigateur n’a pu s’ouvrir ici. Prends un téléphone ou un autre ordinateur.
seller-pair = Associer à une caisse
seller-leave = Quitter la borne
seller-not-kept = Les réglages ne valent que jusqu’à l’arrêt de la tablette ; elle n’a pas pu les enregistrer.
pin-ask = Code PIN du vendeur
pin-not-set = Aucun code n’a encore été choisi. Choisis-en un à la caisse, ou tape le code d’installation de son terminal.
pin-wrong = Ce n’est pas le code PIN.
pin-wait = Trop d’essais. Attends { $seconds } secondes.
pin-away = La caisse ne répond pas, et cette tablette ne connaît pas encore le code PIN.
pair-address = Adresse de la caisse
pair-code = Code affiché à la caisse
pair-done = Associée. C’est la borne { $digit }.
pair-wrong-code = Ce n’est pas le code que montre la caisse. Compare-le avec la page « Tablettes ».
pair-no-code = La caisse ne montre aucun code : chacun sert une fois et pendant dix minutes. Demande-en un autre sur la page « Tablettes ».
pair-no-digit = La caisse n’a plus de chiffre pour une autre tablette. Clos la vente, ou associe de nouveau une tablette libérée.
pair-desk-failed = La caisse n’a pas pu noter l’association. Regarde à la caisse, puis essaie de nouveau.
pair-not-reached = Aucune caisse ne répond à { $desk }. Compare l’adresse avec la page « Tablettes » de la caisse.
pair-not-a-desk = Ce qui répond à { $desk } n’est pas une caisse. Compare l’adresse avec la page « Tablettes » de la caisse.
pair-disk = Cette tablette n’a pas pu garder l’association. Fais-y de la place, puis essaie de nouveau.
key-erase = Effacer
key-enter = Valider

## The card of cautions that is printed at the desk

card-title = { $table } : qui peut porter quoi ?
card-about = Alertes selon ces règles : { $region }. Chaque breloque et chaque base pour elle-même. Ensemble, les breloques peuvent être trop lourdes ou le collier trop long ; le ticket le dit.
card-bases = Bases
card-ready = sans breloques, dans la longueur prête
card-drop = Breloque
card-base = Base
card-care = Avec précaution
card-fine = Rien à signaler
card-signs = Ce que disent les signes et d’où ils viennent
card-found = { $what } (révélé par un test)
card-declared = { $what } (déclaré par le fournisseur)
code-small_part = petite pièce
code-small_ball = taille d’une petite balle
code-magnet = aimant
code-coin_cell = pile bouton
code-glass = verre
code-sharp = coupant ou pointu
code-breakaway = autour du cou
code-cord_loop = longue boucle
code-unknown_metal = métal inconnu
code-lead = plomb
code-cadmium = cadmium
code-nickel = nickel
code-paint = peinture
code-food_allergen = aliment, allergènes
code-looks_like_food = ressemble à un aliment
code-liquid = liquide
code-heavy_on_child = lourd
code-chain_too_short = tour de cou
code-bangle_size = tour de main
