# The desk in English: what the seller reads of cautions.
