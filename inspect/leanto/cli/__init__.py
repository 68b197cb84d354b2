"""The command line front end."""
