# La caja en español: por qué no se aceptó el ticket de una tableta, y qué hacer con un error en los archivos.

not-taken-same-id = llegó otro ticket con el mismo identificador
not-taken-same-number = otro ticket de la feria tiene el número
not-taken-other-lines = la suma y la pieza no tienen las mismas líneas
not-taken-unknown-show = el ticket es de una feria que esta caja no conoce
not-taken-other-currency = la suma está en { $found }, que esta mesa nunca ha aceptado; acepta { $taken }
not-taken-odd-id = «{ $found }» no es un identificador: lleva letras minúsculas, cifras y guiones
not-taken-many-drops = { $n } colgantes no van en ninguna pieza; { $most } como mucho
not-taken-odd-length = un largo de { $mm } mm no se puede hacer; de { $least } mm a { $most } mm, sí
not-taken-odd-neck = un cuello de { $mm } mm no es de nadie; van de { $least } mm a { $most } mm
not-taken-other-digit = el número tiene la cifra de otra tableta
not-taken-not-asked = nadie en la caja lo ha pedido
not-taken-unreadable = la caja no puede leerlo (respuesta { $status }: { $said })
not-taken-no-answer = la caja no respondió ({ $why })
not-taken-desk-failed = algo va mal en la caja (respuesta { $status }: { $said })
mistake-to-do = Abre cada archivo en un editor de texto, corrige el sitio y guárdalo.

kiosk-version = Versión { $version }
kiosk-other-version = Versión { $version }, y la caja tiene la { $own }. Se la atiende tal como está; instala la misma en ambas después de la feria.
kiosk-no-version = No se conoce su versión: es anterior a { $own }, o aún no se ha anunciado. Se la atiende tal como está.
