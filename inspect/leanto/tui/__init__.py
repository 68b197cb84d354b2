"""The terminal front end: it shows and asks, and computes nothing."""
