"""The load-out list: what goes along, by box, to tick twice."""
