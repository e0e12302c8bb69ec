# The desk in German: why the desk refuses.
