# The desk in German: bills, paying and sales.
