# The desk in French: what all pages of the desk share.

# Navigation and what stands on every page.
tab-tickets = Tickets
tab-trays = Plateaux
tab-show = Vente
tab-kiosks = Tablettes
pages = Pages
sign-out = Se déconnecter
do-it = Confirmer
go-back = Revenir
to-tickets = Aux tickets
understood = Compris
practice-on = Exercice : rien ne compte.
practice-ends-below = Il se termine plus bas.
practice-end-there = Le terminer à la page « Vente »
practice-cut-short = La caisse a été arrêtée pendant un exercice. Ce qui était de l’exercice est jeté ; tout le reste est comme avant.
catalogue-mistakes = { $n ->
    [one] Le catalogue a { $n } erreur ; le dernier bon reste en usage.
   *[other] Le catalogue a { $n } erreurs ; le dernier bon reste en usage.
  }
see-mistakes = Voir ce qui ne va pas
tickets-not-taken = { $n ->
    [one] { $n } ticket des tablettes n’a pas été pris.
   *[other] { $n } tickets des tablettes n’ont pas été pris.
  }
see-not-taken = Voir lesquels et les prendre
battery-low-here = La batterie de cet ordinateur est à { $n } %. Branche le chargeur.
battery-low-tablet = La batterie de la tablette { $digit } est à { $n } %. Branche le chargeur.
battery-charging = batterie à { $n } %, chargeur branché
battery-alone = batterie à { $n } %, chargeur débranché
back-to-kiosk = Revenir à l’écran des clients
refused-way-back = aucun écran de clients sur cet ordinateur
disk-nearly-full-here = Le disque de cet ordinateur est presque plein. Fais vite de la place : disque plein, plus aucun ticket ne peut être noté.

# A refusal, and the seller’s PIN for one act.
not-done-title = Pas fait
not-done = Cela n’a pas été fait
refused-sign-in = connecte-toi d’abord
refused-language = il n’y a pas de pages dans cette langue
refused-number = ce n’est pas un numéro de ticket
refused-no-number = aucun ticket de cette vente n’a ce numéro
sellers-pin = Le code de la vendeuse
needs-sellers-pin = Il faut le code de la vendeuse
sellers-to-do = { $what } : c’est à la vendeuse de le faire
sellers-this-once = { $what } : c’est à la vendeuse de le faire. Avec son code, c’est fait cette fois-ci, et tu restes connectée comme { $helper }.
act-take-back = Reprendre ce qui est payé
act-other-way = Corriger un paiement
act-reduce = Accorder une telle remise
act-other-sum = Facturer une somme qui n’est pas de cette table
act-about-show = Dire quelle vente c’est
act-close-show = Clore une vente
act-practise = Commencer un exercice
act-end-practice = Terminer l’exercice
act-pair = Associer une tablette
act-release = Libérer une tablette

# What the page’s script says.
script-silent = La caisse ne répond plus depuis { $time }. Un nouvel essai se fait tout seul.
script-waiting = La caisse n’a pas encore répondu…
script-lost = « { $what } » n’est peut-être pas arrivé.
script-unsure = La caisse n’a pas répondu à « { $what } ». Regarde si c’est fait.
script-again = Le noter encore
script-leave = Laisser
script-signed-out = Tu as été déconnectée avant que « { $what } » soit noté.
script-enter = Le noter maintenant
script-five-digits = Un numéro de ticket a cinq chiffres, comme 3-042-6.
script-wrong-digit = { $typed } n’est pas un numéro de ticket : un chiffre est faux ou deux sont inversés ; regarde encore le ticket.
ago-now = à l’instant
script-minutes = il y a { $n } min
script-hours = il y a { $h } h { $n } min
script-new-above = { $n } de plus en haut
script-new-below = { $n } nouveaux plus bas
script-new-ticket = Nouveau ticket { $what }
script-new-tickets = Nouveaux tickets : { $what }
script-more-waiting = Nouveaux tickets à la fin ; { $n } attendent
