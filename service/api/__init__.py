"""JSON door: a module a resource, schemas beside it."""
