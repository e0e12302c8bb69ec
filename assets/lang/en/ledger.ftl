# The desk in English: why the desk refuses.
