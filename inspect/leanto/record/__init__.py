"""What was entered, kept forever, and the walk folded from it."""
