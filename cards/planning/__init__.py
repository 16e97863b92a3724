"""What the coming weeks ask, what will be known, and what each target costs and keeps."""
