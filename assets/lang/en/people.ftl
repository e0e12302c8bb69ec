# The desk in English: signing in, helpers, tablets.
