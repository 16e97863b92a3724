"""Exports as files: CSV, JSON, Parquet, workbooks, and statements of xAPI."""
