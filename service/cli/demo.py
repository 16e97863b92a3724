"""`catchword demo`: an invented reader's library, in a folder of its own."""

import sys

import click

from service.cli.group import Tools
from service.cli.serve import host_option, port_option

_STEPS = 100


@click.command()
@host_option
@port_option
@click.option("--fresh", is_flag=True, help="Found the demo library anew, ending today.")
@click.pass_obj
def demo(tools: Tools, host: str | None, port: int | None, *, fresh: bool) -> None:
    """Start Catchword with a demo library and print the address to open.

    Its reader is invented, its answers are simulated; your own library is not touched.
    """
    if fresh or not tools.has_demo():
        with click.progressbar(
            length=_STEPS, label="Laying out an invented reader's year", file=sys.stderr
        ) as bar:
            tools.found_demo(lambda share: bar.update(round(share * _STEPS) - bar.pos))
    tools.serve(host, port, True)
