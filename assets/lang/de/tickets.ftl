# The desk in German: the tickets' pages.
