"""A mail server on 127.0.0.1 for one test: aiosmtpd, with the answers that the test wants.

Its one argument is a JSON object: "folder" (where what it takes is written), "protection" ("starttls", "implicit" or
"none"), "certificate" and "key" (PEM files), "login" (true: only the user "plan" with the password "river" may send), and
lists of answers by command, each taken in turn, the last for ever: "mail", "rcpt", "data" (before the letter), "end" (after
it). An answer is what the server replies; "stall" is none at all; "drop" is to hang up; an end of "take and drop" keeps the
letter first. Prints its port when it is ready. Every letter it keeps is a file N.eml with its bytes and a file N.json.
"""
import asyncio
import json
import os
import ssl
import sys

from aiosmtpd.smtp import SMTP, AuthResult

ASKED = json.loads(sys.argv[1])
FOLDER = ASKED["folder"]


def answer(command):
    left = ASKED.get(command, [])
    if not left:
        return None
    return left.pop(0) if len(left) > 1 else left[0]


class Server(SMTP):
    async def instead_of(self, command):
        """True when the test wanted another answer than the usual one, and it was given."""
        wanted = answer(command)
        if wanted is None or wanted.startswith("250") or wanted.startswith("354"):
            return False
        if wanted == "stall":
            await asyncio.sleep(3600)
        if wanted == "drop":
            self.transport.abort()
        else:
            await self.push(wanted)
        return True

    async def smtp_MAIL(self, arg):
        if not await self.instead_of("mail"):
            await super().smtp_MAIL(arg)

    async def smtp_RCPT(self, arg):
        if not await self.instead_of("rcpt"):
            await super().smtp_RCPT(arg)

    async def smtp_DATA(self, arg):
        if not await self.instead_of("data"):
            await super().smtp_DATA(arg)


class Keeper:
    async def handle_DATA(self, server, session, envelope):
        wanted = answer("end") or "250 taken"
        if wanted == "stall":
            await asyncio.sleep(3600)
        if wanted.startswith("250") or wanted.startswith("take"):
            keep(server, session, envelope)
        if wanted in ("drop", "take and drop"):
            server.transport.abort()
        return wanted


def keep(server, session, envelope):
    number = len([name for name in os.listdir(FOLDER) if name.endswith(".eml")])
    with open(f"{FOLDER}/{number}.eml", "wb") as out:
        out.write(envelope.original_content)
    about = {"from": envelope.mail_from, "to": envelope.rcpt_tos, "tls": server.transport.get_extra_info("ssl_object") is not None,
             "user": (session.auth_data or b"").decode()}
    with open(f"{FOLDER}/{number}.json", "w") as out:
        json.dump(about, out)


def login(server, session, envelope, mechanism, data):
    good = data.login == b"plan" and data.password == b"river"
    return AuthResult(success=good, handled=False, auth_data=data.login if good else None)


def context():
    made = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    made.load_cert_chain(ASKED["certificate"], ASKED["key"])
    return made


async def serve():
    protection = ASKED.get("protection", "none")
    options = {"hostname": "mail.example.org"}
    if protection == "starttls":
        options.update(tls_context=context(), require_starttls=True)
    if ASKED.get("login"):
        options.update(authenticator=login, auth_required=True, auth_require_tls=protection == "starttls")
    loop = asyncio.get_running_loop()
    server = await loop.create_server(lambda: Server(Keeper(), **options), "127.0.0.1", 0,
                                      ssl=context() if protection == "implicit" else None)
    print(server.sockets[0].getsockname()[1], flush=True)
    await server.serve_forever()


asyncio.run(serve())
