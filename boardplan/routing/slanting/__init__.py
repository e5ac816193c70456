"""Ways that are not square: bent at any angle where no level and upright one has room, or is as clean."""
