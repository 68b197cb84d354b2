"""The trade's computations fed from a building and its walk, one file a subject."""
