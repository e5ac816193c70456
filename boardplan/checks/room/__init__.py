"""Where a component may lie: the checks read backwards, from limits to places."""
