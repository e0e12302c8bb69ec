# The desk in French: signing in, helpers, tablets.
