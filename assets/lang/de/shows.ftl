# The desk in German: the show, practice, trays.
