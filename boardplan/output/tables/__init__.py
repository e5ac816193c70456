"""Tables on sheets and as text."""
