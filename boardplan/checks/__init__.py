"""What is wrong with a plan; one file for each question."""
