# The desk in Spanish: the show, practice, trays.
