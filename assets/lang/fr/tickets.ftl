# The desk in French: the tickets' pages.
