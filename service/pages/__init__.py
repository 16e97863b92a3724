"""HTML door: a module a page, templates and static files beside it."""
