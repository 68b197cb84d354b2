"""Bids: the form that goes out, the bids that come back, and the same base for all of them."""
