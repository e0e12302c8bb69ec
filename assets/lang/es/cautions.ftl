# The desk in Spanish: what the seller reads of cautions.
