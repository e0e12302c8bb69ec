# The desk in English: the show, practice, trays.
