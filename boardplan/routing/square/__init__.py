"""Ways of level and upright legs for a cable alone: what blocks it, the lines open to it, the least costly way."""
