# The desk in English: receipts, slips and printed pages.
