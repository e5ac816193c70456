"""What stands beside the canvas: the course of the job, its lists and its forms."""
