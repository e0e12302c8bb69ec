# The desk in French: why the ledger refuses.

# The ledger's file and its disk.
ledger-disk-full = le disque est plein, donc rien n’a été noté ; ce qui est gardé est en sûreté. Fais de la place sur cet ordinateur et recommence
ledger-database = le livre de caisse n’a pas pu être lu ou écrit : { $why }
ledger-damaged = une note du livre de caisse est abîmée : { $why }
ledger-unreadable = le ticket { $number } ne peut pas être lu ({ $why }) ; le reste du livre de caisse n’en souffre pas
ledger-damaged-file = le livre de caisse { $file } est abîmé ({ $why }), donc la caisse n’a pas démarré ; rien n’y a été changé.
ledger-emptied = le livre de caisse { $file } est vide ou disparu, alors que ce dossier en avait un, donc la caisse n’a pas démarré. A-t-il été copié sans ledger.sqlite-wal à côté, pendant qu’une caisse tournait ?
ledger-what-to-do = Ce que tu peux faire : sors de { $folder } tous les fichiers dont le nom commence par « ledger. » et garde-les. Puis, au choix
ledger-put-backup = - mets-y une sauvegarde sous le nom ledger.sqlite (faite par `chatelaine backup`) et redémarre : ce qui a été noté depuis est perdu, sauf les tickets qui attendent encore sur une tablette ; ou
ledger-begin-anew = - redémarre sans : un nouveau livre de caisse commence. Les tickets, sommes et comptes de l’ancien n’y sont pas ; le code est choisi de nouveau et les tablettes sont associées de nouveau.
ledger-found-damaged = le fichier du livre de caisse est abîmé ; arrête la caisse et redémarre-la : elle dit alors ce qui peut être fait
ledger-not-kept = cela n’a pas pu être gardé, et rien n’en a été noté ({ $why }) ; recommence
ledger-panicked = quelque chose a mal tourné à la caisse, et rien n’en a été noté ; ce qui était noté avant est en sûreté
ledger-old-library = ce programme a été construit avec SQLite { $version }, qui peut perdre une note confirmée ; il faut 3.51.3 ou plus récent
ledger-newer = le livre de caisse a été écrit par une version plus récente de ce programme (structure { $found }, celle-ci connaît { $known })
ledger-older = le livre de caisse est d’une version antérieure (structure { $found }, celle-ci a { $known }) ; démarre une fois la caisse avec lui

# Shows.
ledger-last-show = la vente { $show } a le dernier numéro d’un livre de caisse, donc aucune ne peut la suivre ; rien n’a été clos. Commence un nouveau livre de caisse
ledger-show-closed = la vente { $show } est close, et ce qu’elle était ne peut plus être changé
ledger-no-place-name = « { $found } » n’est pas un nom de lieu ; écris jusqu’à { $most } caractères simples
ledger-no-host-name = « { $found } » n’est pas un nom d’hôtesse ; écris jusqu’à { $most } caractères simples
ledger-no-fee = { $found } n’est pas un prix d’emplacement ; écris un montant de 0 à { $most } avec { $digits } décimales au plus
ledger-no-float = { $found } n’est pas un fond de caisse ; écris un montant de 0 à { $most } avec { $digits } décimales au plus
ledger-no-tax = { $found } n’est pas une taxe ; écris un pourcentage de 0 à 100 avec 4 décimales au plus

# Tickets.
ledger-sum-not-confirmed = la somme du ticket n’est pas de cette table ; dis d’abord ce qui est demandé
ledger-sum-stands = la somme du ticket est bien de cette table ; elle est demandée telle que le client l’a vue
ledger-other-currency = la somme est en { $found }, et cette table prend { $taken } ; demande les prix du jour ou abandonne le ticket
ledger-no-ticket = il n’y a pas de ticket { $id }
ledger-no-line = le ticket n’a pas cette ligne
ledger-state = un ticket « { $from } » ne peut pas devenir « { $to } »
ledger-closed = un ticket « { $state } » ne peut plus être changé
ledger-not-ticked = { $n ->
    [one] { $n } élément du bijou n’est pas encore coché
   *[other] { $n } éléments du bijou ne sont pas encore cochés
  }
ledger-not-told = le bijou a des précautions ; coche que le client en a été averti avant d’encaisser
ledger-not-suitable = le bijou n’est pas pour cet âge ({ $hazards }) ; change le bijou ou la personne, ou confirme chacun de ces points comme vendu à un adulte
ledger-forbidden = un élément du bijou ne peut être vendu à personne ({ $hazards }) ; retire-le du bijou
ledger-no-hazard = rien de ce genre ne s’oppose au bijou tel qu’il est maintenant
ledger-none-left = d’après le compte, il ne reste pas de « { $name } » ; s’il est devant toi, dis qu’il a été trouvé
ledger-not-sold = un ticket « { $state } » n’a pas été vendu, donc rien n’en peut être repris
ledger-opened-otherwise = un autre bijou a déjà été ouvert avec ce formulaire ; commence une nouvelle vente pour celui-ci

# Bills.
ledger-no-bill = il n’y a pas de note { $id }
ledger-not-on-bill = le ticket n’est pas sur cette note
ledger-with-others = le ticket est sur une note avec d’autres choses, ou une partie en est payée ; encaisse sur la note
ledger-long-bill = une note a { $most } tickets et { $most } lignes au plus ; commence-en une autre
ledger-bill-changed = la note a changé entre-temps, il reste { $due } à payer ; regarde-la de nouveau, rien n’a été encaissé
ledger-nothing-to-pay = tout est payé sur la note
ledger-no-part = { $amount } n’est pas une partie du dû : dis un montant au-dessus de 0 et jusqu’à { $due }, en pièces qui existent
ledger-given-too-little = { $given } ont été donnés et { $due } sont dus ; dis ce qui a été donné, ou prends une partie
ledger-paid-already = c’est payé, en tout ou en partie ; reprends-le avec sa raison
ledger-not-paid = ce n’est pas encore payé ; retire-le
ledger-right-already = ce paiement est déjà noté ainsi, ou a déjà été corrigé
ledger-no-reason = dis pourquoi ; quelques mots suffisent
ledger-no-words = écris quelques mots sur une ligne, { $most } caractères au plus

# Parts and the catalogue.
ledger-no-count = rien de nommé « { $name } » n’est compté ici
ledger-too-many-there = il y en aurait plus de { $most }, aucune case n’en contient autant
ledger-no-base = il n’y a pas de base « { $name } » au catalogue
ledger-no-base-like = il n’y a pas de base « { $name } » au catalogue ; voulais-tu dire « { $like } » ?
ledger-no-drop = il n’y a pas de breloque « { $name } » au catalogue
ledger-no-drop-like = il n’y a pas de breloque « { $name } » au catalogue ; voulais-tu dire « { $like } » ?
ledger-no-fit = l’anneau de « { $name } » ne passe pas à la main sur « { $base } » : il s’ouvre de { $opens } mm, et il faut plus de { $needs } mm
ledger-no-length = « { $base } » se fait de { $shortest } mm à { $longest } mm, pas de { $length } mm
ledger-bangle-length = « { $base } » est un bracelet rigide, qui n’a pas de longueur ; laisse `length` de côté

# Tablets, helpers, numbers.
ledger-nine-kiosks = neuf chiffres sont donnés, ou en repos jusqu’à la clôture de la vente parce que leur tablette a été libérée, et un est celui de la caisse ; clos la vente, ou associe de nouveau une tablette libérée
ledger-no-digit-for-the-desk = des tablettes ont les dix chiffres, donc la caisse n’en a aucun pour ses propres numéros ; libère une tablette, puis clos la vente
ledger-no-name = « { $name } » ne peut pas être un nom : un nom a 1 à { $most } caractères, tous visibles, et pas de virgule
ledger-name-taken = « { $name } » travaille déjà ici ; prends un autre nom, pour que les notes disent qui les a faites
ledger-sellers-name = { $name } est le nom de la vendeuse ; prends-en un autre, pour que les notes disent qui les a faites
ledger-staff-full = { $most } personnes aident déjà ici ; retire quelqu’un qui ne vient plus
ledger-nobody = personne du nom de « { $name } » ne travaille ici
ledger-number-shape = un numéro de ticket a cinq chiffres, comme 3-042-6
ledger-number-check = { $number } n’est pas un numéro de ticket : un chiffre est faux ou deux sont échangés ; regarde le ticket de nouveau
ledger-number-range = une tablette donne les numéros 000 à 999 pendant une vente ; clos la vente pour recommencer
