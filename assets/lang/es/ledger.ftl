# The desk in Spanish: why the desk refuses.
