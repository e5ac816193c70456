"""The cable cut list and how lugs stack."""
