"""Lists of the plan as Qt item models, all of one kind of row."""
