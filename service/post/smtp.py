"""Handing a mail to a mail server by SMTP (RFC 5321), as the settings say."""

import smtplib
import ssl

from service.post.writing import written
from service.use_cases.letter_records import Letter, MailServer, Security
from service.use_cases.ports import MailNotSent

_SECONDS = 30.0
"""How long a mail server is waited for."""


class SmtpPost:
    """Sends mail by a server; satisfies `ports.Post`."""

    def __init__(self, server: MailServer, context: ssl.SSLContext | None = None) -> None:
        self._server = server
        self._context = context

    def send(self, letter: Letter) -> None:
        """Send a mail.

        Raises:
            MailNotSent: the server cannot be reached, or refuses it.
        """
        message = written(letter, self._server.sender)
        try:
            with self._connected() as connection:
                if self._server.user:
                    connection.login(self._server.user, self._server.password)
                connection.send_message(message)
        except smtplib.SMTPAuthenticationError as error:
            raise MailNotSent("the server does not know the user or the password.") from error
        except smtplib.SMTPRecipientsRefused as error:
            raise MailNotSent(f"the server refuses the address {letter.to}.") from error
        except smtplib.SMTPResponseException as error:
            raise MailNotSent(f"the server refuses it with code {error.smtp_code}.") from error
        except (smtplib.SMTPException, OSError, ValueError) as error:
            where = f"{self._server.host}, port {self._server.port}"
            raise MailNotSent(f"the server at {where} cannot be reached or used.") from error

    def _connected(self) -> smtplib.SMTP:
        server = self._server
        if server.security is Security.TLS:
            context = self._context or ssl.create_default_context()
            return smtplib.SMTP_SSL(server.host, server.port, timeout=_SECONDS, context=context)
        connection = smtplib.SMTP(server.host, server.port, timeout=_SECONDS)
        if server.security is Security.STARTTLS:
            try:
                connection.starttls(context=self._context or ssl.create_default_context())
            except (smtplib.SMTPException, OSError):
                connection.close()
                raise
        return connection
