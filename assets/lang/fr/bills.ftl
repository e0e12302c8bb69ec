# The desk in French: bills, paying and sales.
