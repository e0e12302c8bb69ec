# The desk in Spanish: the tickets' pages.
