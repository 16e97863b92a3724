"""`catchword serve`: open the reader's own library to a browser."""

import click

from service.cli.group import Tools

host_option = click.option(
    "--host", metavar="ADDRESS", help="Where to listen; only this machine unless set."
)
port_option = click.option(
    "--port", type=click.IntRange(0, 65535), metavar="PORT", help="0 takes any free port."
)


@click.command()
@host_option
@port_option
@click.pass_obj
def serve(tools: Tools, host: str | None, port: int | None) -> None:
    """Start Catchword on your own library and print the address to open."""
    tools.serve(host, port, False)
