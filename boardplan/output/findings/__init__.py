"""The findings on paper, and what a review comes to in words."""
