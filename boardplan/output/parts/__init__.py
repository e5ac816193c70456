"""Every part that a job needs, reckoned from its plan: what is packed, and what is bought."""
