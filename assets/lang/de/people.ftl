# The desk in German: signing in, helpers, tablets.
