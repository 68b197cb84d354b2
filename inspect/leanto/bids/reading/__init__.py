"""Returned files -> fields as they were typed -> a bid, with everything that could not be read."""
