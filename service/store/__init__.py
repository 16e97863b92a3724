"""Tables, repositories, the unit of work and the migrations."""
