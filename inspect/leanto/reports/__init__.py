"""Assessment -> blocks -> text and PDF."""
