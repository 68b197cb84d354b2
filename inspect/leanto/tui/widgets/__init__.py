"""What the screens are made of: they show what they are given, and say what was done to them."""
