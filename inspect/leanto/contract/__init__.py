"""What follows once a bid is chosen: what was agreed, what opened walls change, what is paid."""
