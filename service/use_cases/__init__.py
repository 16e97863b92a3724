"""One module for each thing a reader comes to do; `ports` says what they need."""
