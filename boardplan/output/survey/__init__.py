"""What goes back to site: dimensions to measure again before anything is cut to them."""
