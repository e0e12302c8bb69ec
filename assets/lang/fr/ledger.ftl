# The desk in French: why the desk refuses.
