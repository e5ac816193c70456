"""What a plan is: frozen values joined by ids."""
