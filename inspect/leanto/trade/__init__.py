"""Published computations of the trade: plain numbers in, plain numbers and frozen values out."""
