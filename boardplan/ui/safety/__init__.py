"""Nothing lost: unsaved work kept aside, offered again, and files that somebody else has open or has changed."""
