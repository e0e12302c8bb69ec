# The desk in English: bills, paying and sales.
