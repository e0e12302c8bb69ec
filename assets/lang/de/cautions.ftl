# The desk in German: what the seller reads of cautions.
