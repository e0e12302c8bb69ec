# The desk in Spanish: bills, paying and sales.
