# The desk in Spanish: receipts, slips and printed pages.
