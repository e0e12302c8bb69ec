# The desk in French: receipts, slips and printed pages.
