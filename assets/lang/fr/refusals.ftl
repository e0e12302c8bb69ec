# La caisse en français : pourquoi le ticket d’une tablette n’a pas été pris, et que faire d’une erreur dans les fichiers.

not-taken-same-id = un autre ticket est arrivé sous le même identifiant
not-taken-same-number = un autre ticket de la vente porte ce numéro
not-taken-other-lines = la somme et le bijou n’ont pas les mêmes lignes
not-taken-unknown-show = le ticket est d’une vente que cette caisse ne connaît pas
not-taken-other-currency = la somme est en { $found }, que cette table n’a jamais pris ; elle prend { $taken }
not-taken-odd-id = « { $found } » n’est pas un identifiant : il y faut de petites lettres, des chiffres et des traits d’union
not-taken-many-drops = { $n } breloques ne vont sur aucun bijou ; { $most } au plus
not-taken-odd-length = une longueur de { $mm } mm ne se fait pas ; de { $least } mm à { $most } mm, oui
not-taken-odd-neck = un cou de { $mm } mm n’est à personne ; ils vont de { $least } mm à { $most } mm
not-taken-other-digit = le numéro a le chiffre d’une autre tablette
not-taken-not-asked = personne à la caisse ne l’a demandé
not-taken-unreadable = la caisse n’arrive pas à le lire (réponse { $status } : { $said })
not-taken-no-answer = la caisse n’a pas répondu ({ $why })
not-taken-desk-failed = quelque chose ne va pas à la caisse (réponse { $status } : { $said })
mistake-to-do = Ouvre chaque fichier dans un éditeur de texte, corrige l’endroit et enregistre.

kiosk-version = Version { $version }
kiosk-other-version = Version { $version }, et la caisse a la { $own }. Elle est servie telle quelle ; installe la même sur les deux après la vente.
kiosk-no-version = Sa version n’est pas connue : plus ancienne que { $own }, ou elle ne s’est pas encore annoncée. Elle est servie telle quelle.
