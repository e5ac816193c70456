"""What holds cables: clamps at the distances of the rule set, the screws they need, retainers in channels."""
