"""What the tape measures, and the surfaces that follow from it."""
