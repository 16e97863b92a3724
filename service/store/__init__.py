"""Where everything is kept: tables, repositories, one transaction a use case, migrations.

`sql_store.SqlStore` is the way in; it satisfies `service.use_cases.ports.Store`.
"""
