"""The cover of a job pack: the boards drawn to scale, and what a reader needs to know first."""
