# The desk in French: signing in, helpers, tablets, trays.

# Choosing a PIN and signing in.
setup-title = Choisir un code
setup-heading = Choisis le code de la vendeuse
setup-about = 6 à 12 chiffres sans suite logique. Il ouvre cette caisse et les réglages de chaque tablette.
setup-code = Code d’installation, tel que le terminal de la caisse l’affiche
pin-field = Code PIN
pin-again = Le code encore une fois
pin-shape = 6 à 12 chiffres
setup-keep = Garder ce code
setup-not-the-code = Ce n’est pas le code que le terminal de la caisse affiche.
pin-not-same = Les deux ne sont pas les mêmes. Tape le code deux fois.
pin-not-right = Ce n’est pas le bon code.
pin-too-many = { $n ->
    [one] Trop d’essais. Attends { $n } seconde, ou connecte-toi sur l’ordinateur où tourne la caisse.
   *[other] Trop d’essais. Attends { $n } secondes, ou connecte-toi sur l’ordinateur où tourne la caisse.
  }
pin-not-a-pin = Un code a 6 à 12 chiffres et rien d’autre.
pin-too-easy = Ce code est l’un des premiers que chacun essaierait. Choisis des chiffres sans suite logique.
sign-in = Se connecter
sign-in-lost = Ta session a pris fin avant que ce soit noté. Connecte-toi et recommence.
sign-in-sellers-desk = La caisse de la vendeuse
sign-in-desk = La caisse
sign-in-name = Ton nom
sign-in-name-hint = – la vendeuse laisse ce champ vide
sign-in-who = Qui es-tu ?
sign-in-no-match = Ce nom et ce code ne vont pas ensemble.

# Who did something.
seller-by-name = Vendeuse
approved-by-the-seller = { $name }, avec l’accord de la vendeuse

# Another PIN.
change-pin = Changer le code
change-pin-of = Changer le code de { $name }
change-own-pin = Changer ton code
change-pin-about = Tous les autres téléphones et ordinateurs où tu es connectée sont déconnectés.
change-pin-tablets = Une tablette hors de portée garde l’ancien code jusqu’à ce que la caisse lui ait dit le nouveau.
pin-now = Le code actuel
pin-new = Le nouveau code, 6 à 12 chiffres sans suite logique
pin-new-again = Le nouveau code encore une fois
change-it = Le changer
new-pin-not-same = Les deux ne sont pas les mêmes. Tape le nouveau code deux fois.

# Helpers.
staff-title = Équipe
staff-who = Qui travaille ici
staff-you = – toi. Tout t’est permis.
staff-about = Une aide vérifie les bijoux, les encaisse et compte. Rendre de l’argent, accorder une forte remise, clore une vente et associer ou libérer une tablette demandent ton code, que tu peux taper pour cette fois sur le téléphone de l’aide. Cette page et la déconnexion des autres ne sont qu’à toi.
staff-add = Ajouter une aide
staff-name = Nom, tel qu’il figurera dans les notes
staff-add-yes = Ajouter et faire un code
staff-since = – aide depuis { $time }
staff-new-pin = Nouveau code
staff-remove = Retirer
staff-act = { $act } – { $name }
staff-pin-title = Le code d’une aide
staff-pin-of = Le code de { $name }
staff-pin-told = Dis-le maintenant à { $name } : il n’est montré que cette fois. Sur son téléphone, { $name } ouvre cette caisse, tape son nom et ce code, et peut choisir un autre code à la page « Tablettes ».
done = Terminé
staff-ask-pin = Un nouveau code pour { $name } ?
staff-ask-pin-text = L’ancien n’ouvre plus rien, et ses téléphones sont déconnectés.
staff-ask-pin-yes = Faire un nouveau code
staff-ask-remove = Retirer { $name } ?
staff-ask-remove-text = Ses téléphones sont déconnectés, et il n’est plus possible de se connecter sous ce nom. Ce qui a été noté garde le nom.

# Who is signed in.
devices = Appareils connectés
devices-own = Où tu es connectée
device-of = { $name } :
device-at = à { $address }, depuis { $time }
device-this = , celui-ci
browser-on = { $program } sur { $system }
browser-unnamed = Un navigateur
sign-out-everywhere = Se déconnecter partout
sign-everybody-out = Déconnecter tout le monde

# The tablets, and a phone as another till.
phone-till = Un téléphone comme autre caisse
phone-till-scan = Vise ceci avec l’appareil photo d’un téléphone du même réseau, et connecte-toi là-bas.
phone-till-others = Si rien ne vient : d’autres adresses
phone-till-alone = Cette caisse n’est dans aucun réseau, donc aucun téléphone ne l’atteint : { $address } ne marche que sur cet ordinateur.
qr-of = Code QR pour { $address }
pair-kiosk = Associer une tablette
pair-type-code = { $n ->
    [one] Tape ceci sur la tablette, d’ici { $n } minute :
   *[other] Tape ceci sur la tablette, d’ici { $n } minutes :
  }
pair-desks-address = L’adresse de la caisse :
pair-here-alone = { $address } (seulement sur cet ordinateur : il n’est dans aucun réseau)
pair-another-code = Un autre code
pair-about = Chaque code associe une tablette et vaut dix minutes.
pair-new-code = Nouveau code d’association
kiosks-paired = Tablettes associées
kiosks-tally = Associées
kiosks-none = Aucune tablette n’est encore associée.
kiosk-since = Associée { $time }
kiosk-in-reach = à portée
kiosk-silent = { $n ->
    [one] sans réponse depuis { $n } minute
   *[other] sans réponse depuis { $n } minutes
  }
kiosk-not-heard = pas entendue depuis le démarrage de la caisse
kiosk-release = Libérer
kiosk-waiting = { $n ->
    [one] { $n } ticket en route
   *[other] { $n } tickets en route
  }
kiosk-not-taken = { $n ->
    [one] { $n } ticket n’a pas été pris
   *[other] { $n } tickets n’ont pas été pris
  }
kiosk-guest-waits = Le client attend peut-être avec le numéro.
kiosk-unreadable = { $n ->
    [one] { $n } fichier de cette tablette devrait être un ticket et ne peut pas être lu. Il reste dans le dossier « refused ».
   *[other] { $n } fichiers de cette tablette devraient être des tickets et ne peuvent pas être lus. Ils restent dans le dossier « refused ».
  }
kiosk-renumbered-of = Du client qui a { $before } :
kiosk-renumbered = { $before } est arrivé comme { $number }
kiosk-comes-in = Il arrive dès que la tablette répond.
kiosk-goes-away = Il est rangé dès que la tablette répond.
kiosk-take-in = Le prendre
kiosk-put-away = Le ranger
put-away-title = Ranger un ticket ?
put-away-ask = Ranger le ticket { $number } ?
put-away-text = Il n’est plus signalé et ne peut plus être pris. Son fichier reste sur la tablette, dans le dossier « put-away ».
release-title = Libérer une tablette ?
release-ask = Libérer la tablette { $digit } ?
release-text = Elle ne peut plus envoyer de tickets, pas même ceux qu’elle garde encore, jusqu’à ce qu’elle soit associée de nouveau ; alors elle retrouve son chiffre, et ils arrivent. Une autre tablette ne reçoit ce chiffre qu’après la clôture de la vente.
release-keeps = { $n ->
    [one] Elle garde encore { $n } ticket : { $numbers }.
   *[other] Elle garde encore { $n } tickets : { $numbers }.
  }
release-yes = La libérer

# The trays and their counts.
trays-card = Qui peut porter quoi : la carte des précautions, à imprimer
trays-bases = Bases
mistakes-title = Erreurs dans le catalogue
mistakes-about = Le dernier bon catalogue reste en usage jusqu’à ce qu’elles soient corrigées ; cette page suit d’elle-même.
mistake-at = , ligne { $line }, colonne { $column }
remarks = Remarques
remarks-title = À regarder
cell-change = { $name }, { $free } : changer le compte
cell-held = { $n } en attente
part-free = Libres
part-held = En attente pour des tickets
part-on-hand = En tout
part-how-many = Combien y en a-t-il dans la case, libres d’être pris ?
part-one-less = un de moins
part-one-more = un de plus
part-keep = Garder ce compte
part-sold-out = Marquer épuisé
to-trays = Aux plateaux
part-no-count = « { $typed } » n’est pas un compte ; tape un nombre de 0 à { $most }.
cautions-title = Précautions
card-print = Imprimer cette carte
region-US = États-Unis
region-EU = Union européenne
region-UK = Royaume-Uni

# An address that leads nowhere.
nowhere = Cette page n’existe pas
nowhere-text = À cette caisse, il n’y a pas de page { $path }. L’adresse est peut-être mal tapée, ou ce qui s’y trouvait n’est plus là.
refused-nowhere = il n’y a rien pour les tablettes à { $path }

# Why something is refused.
refused-sellers = c’est à la vendeuse de le faire ; tu es connectée comme { $name }
refused-sellers-pin = le code de la vendeuse est changé par qui le connaît
refused-no-device = cet appareil n’est plus connecté
refused-no-such-ticket = ce ticket n’est plus sur la tablette { $digit } ; regarde de nouveau la page « Tablettes »
refused-no-part = rien au catalogue ne s’appelle « { $name } »
refused-no-picture = aucune image ne s’appelle « { $name } »
refused-pin-not-checked = le code n’a pas pu être vérifié
refused-system = cet ordinateur ne peut pas le faire maintenant ({ $why }) ; recommence
refused-closing = la caisse s’arrête
refused-panic = quelque chose a mal tourné à la caisse ; ce qui était noté avant est en sûreté
refused-too-much = c’est plus que la caisse n’en prend d’un coup
refused-broke-off = l’envoi s’est interrompu
refused-too-slow = l’envoi n’est pas arrivé à temps ; envoie-le de nouveau
refused-not-read = ce qui a été envoyé n’a pas de sens ici
refused-not-read-because = ce qui a été envoyé ne peut pas être lu : { $why }
refused-nobody = personne ne sait qui demande
refused-other-name = ouvre la caisse par son numéro, comme dans { $address }
refused-other-site = ce changement a été demandé par un autre site ; rien n’a été changé
refused-practice-not-begun = l’exercice ne peut pas commencer, et tout est comme avant : { $why }
refused-practice-busy = l’exercice ne peut pas commencer, et tout est comme avant : le livre de caisse était occupé tout le temps ; essaie de nouveau
refused-lost-in-practice = cela serait perdu à la fin de l’exercice : les codes et les tablettes restent comme ils sont pendant que quelqu’un s’exerce. Termine d’abord l’exercice, à la page « Vente »
refused-practice-began = un exercice a commencé depuis que cette page a été montrée, donc rien n’a été fait ; regarde la page de nouveau
refused-practice-ended = l’exercice s’est terminé depuis que cette page a été montrée, donc rien n’a été fait ; regarde la page de nouveau
refused-tablet-unknown = la caisse ne connaît pas cette tablette ; associe-la de nouveau
refused-tablets-not-looked-up = la caisse ne peut pas consulter ses tablettes maintenant
refused-own-key = la clé de la tablette doit avoir 64 chiffres hexadécimaux
refused-practice-old-tablet = la caisse s’exerce maintenant ; cette tablette a une version antérieure, qui ne sait pas s’exercer
refused-practice-waits = la caisse s’exerce maintenant ; ce qui compte attend sur sa tablette jusqu’à la fin de l’exercice
