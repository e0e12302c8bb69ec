# The desk in French: the show, practice, trays.
