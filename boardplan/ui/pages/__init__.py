"""The pages of a job's papers, looked at as they will be printed."""
