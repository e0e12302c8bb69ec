# The desk in French: what the seller reads of cautions.
