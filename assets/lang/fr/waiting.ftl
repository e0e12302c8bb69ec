# La caisse en français : les clients qui attendent une place, et le tableau.

waiting-title = Attendre une place
waiting-about = Quand toutes les places sont prises, les clients reçoivent un numéro, composent entre-temps sur une tablette et sont appelés. Dis combien de places la table a pour cette vente.
waiting-seats = Places à la table
waiting-seats-enter = Autant de places
waiting-seats-change = Un autre nombre de places
waiting-table = À la table
waiting-sitting = { $n } places prises sur { $of }
waiting-tally = { $n ->
    [0] personne n’attend
    [one] 1 personne attend
   *[other] { $n } personnes attendent
}
waiting-new-guest = Pour qui arrive maintenant : { $wait }
waiting-no-wait = sans attente
waiting-up-to = jusqu’à { $to } min
waiting-from-to = { $from } à { $to } min
waiting-take = Donner le numéro { $number }
waiting-given = Le numéro { $number } est donné : { $wait }.
waiting-sit-down = Quelqu’un s’assoit
waiting-seat-free = Une place est libre
waiting-call = Appeler le { $number }
waiting-free-and-call = Une place est libre : appeler le { $number }
waiting-called = Appelés
waiting-came = Est là
waiting-not-come = N’est pas là
waiting-line = La file
waiting-nobody = Personne n’attend de place.
waiting-gone = N’attend plus
waiting-absent = Appelés et absents
waiting-late = Est là maintenant : au tour suivant
waiting-board = Tableau des numéros
waiting-board-hint = Pour n’importe quel écran ou vieux téléphone du réseau de la caisse : ouvre là-bas cette adresse. Sans code, elle ne montre que des numéros.
waiting-board-come = À table, s’il te plaît
waiting-board-none = Personne n’est appelé maintenant.
waiting-board-new = Nouveaux clients : { $wait }
waiting-board-silent = La caisse ne répond pas. Demande à la table.
waiting-elsewhere = le numéro { $number } n’est plus à cet endroit ; regarde la file encore une fois
waiting-no-seat = aucune place n’est libre ; attends que quelqu’un se lève, ou dis que la personne appelée n’est pas là
waiting-nobody-sits = personne n’est assis à la table, donc aucune place ne se libère
waiting-others-wait = d’autres attendent et passent avant ; donne un numéro
waiting-no-seats = { $seats } n’est pas un nombre de places ; il va de 1 à 99
waiting-full = 400 personnes attendent déjà ; personne n’attendrait aussi longtemps
waiting-no-step = { $found } n’est rien que l’on fait dans la file
