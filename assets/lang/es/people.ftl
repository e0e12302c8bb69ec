# The desk in Spanish: signing in, helpers, tablets.
