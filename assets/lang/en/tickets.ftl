# The desk in English: the tickets' pages.
