# La caisse en français : le papier pour la table, et la place d’une pièce égarée.

# Sur le papier.
labels-title = Papier pour { $table }
labels-marks = Étiquettes de prix
labels-tags = Étiquettes des chaînes et bracelets
labels-set-up = Mise en place
labels-prices = Prix
labels-bases = Chaînes et bracelets
labels-lengths = { $from_cm } à { $to_cm } cm · { $from_in } à { $to_in } in
labels-tax-added = Plus { $percent } % de taxe
labels-tax-included = Dont { $percent } % de taxe
labels-foot = { $title }, feuille { $n } sur { $all }. Coupe le long des traits ; plie aux pointillés, ou coupe là aussi.
labels-ruler = { $mm } mm si c’est imprimé en taille réelle.
labels-map-hint = tel qu’il est devant les clients
labels-lay = { $n } × { $name } · { $price }
labels-first-desk = La caisse est allumée et quelqu’un est connecté
labels-first-tablets = Les tablettes sont chargées et montrent cette table
labels-first-float = Le fond de caisse est compté
labels-first-cautions = La carte des précautions est posée à côté des plateaux
labels-first-put-back = Le code pour les pièces égarées est à portée de ceux qui aident
labels-code-hint = Pour ceux qui aident : vise ce code avec l’appareil photo du téléphone, puis touche l’image de la pièce trouvée.

# Sur les pages de la caisse.
labels-page = Papier pour la table
labels-page-hint = Étiquettes de prix pour les deux bords de chaque case, étiquettes, plans, listes : en PDF à imprimer et à couper.
labels-what = Quoi
labels-all = Tout
labels-maps = Plans des plateaux
labels-code = Code pour les pièces égarées
labels-sheet = Feuilles
labels-columns = Étiquettes côte à côte
labels-rows = Étiquettes l’une sous l’autre
labels-margin-above = Marge en haut et en bas, en mm
labels-margin-beside = Marge à gauche et à droite, en mm
labels-grid-hint = Ainsi, une étiquette fait { $width } × { $height } mm, à peu près comme le bord d’une case. Avec un nombre pair l’une sous l’autre, les deux d’une case sont tête contre tête : plie-les sur un bord, ou sépare-les.
labels-tray = Quel plateau
labels-every-tray = Tous les plateaux
labels-language = Langue
labels-how-much = Combien
labels-changed-only = Seulement ce qui est nouveau depuis la dernière impression
labels-changed = { $n ->
    [0] Toutes les étiquettes sont comme à la dernière impression.
    [one] 1 étiquette est nouvelle depuis la dernière impression : { $homes }
   *[other] { $n } étiquettes sont nouvelles depuis la dernière impression : { $homes }
}
labels-never = Aucune étiquette n’a encore été imprimée.
labels-make = Créer le PDF
labels-done = C’est imprimé
labels-done-hint = Imprime en taille réelle (100 %), sans ajuster à la page. Quand les étiquettes sont coupées, dis-le ici : la prochaine fois ne viennent que celles qui disent autre chose.
labels-noted = C’est noté. Seul ce qui change à partir de maintenant est nouveau.
labels-stale = La table a changé depuis que cette page a été faite. Crée le PDF encore une fois avant de dire qu’il est imprimé.
labels-nothing = rien de cela n’est sur la table, ou rien n’en est nouveau
labels-grid-shape = une grille a des colonnes et des rangées, comme 4 et 14
labels-grid-margin = une marge est un nombre de millimètres de 0 à 60
labels-grid-count = on peut mettre 1 à 10 étiquettes côte à côte et 1 à 28 l’une sous l’autre
labels-grid-small = des étiquettes de { $width } × { $height } mm sont trop petites pour être lues ; prends-en moins, pour au moins 20 × 10 mm
labels-not-noted = ce qui a été imprimé n’a pas pu être noté : { $why }
put-back-none = Il n’y a encore rien sur la table.
put-back-at = { $name } va en { $home }.
