# The desk in German: receipts, slips and printed pages.
