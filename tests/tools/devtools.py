"""A headless Chromium on a pipe: its DevTools protocol, with nothing but the standard library.

Messages are JSON and end in a NUL; the browser reads them on file descriptor 3 and writes on 4. Nothing listens on a
port, and the browser can reach no network: every name of a host is one that does not exist.
"""
import fcntl
import json
import os
import select
import shutil
import subprocess
import tempfile
import time

SWITCHES = ("--headless", "--no-sandbox", "--remote-debugging-pipe", "--disable-gpu", "--no-first-run",
            "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-extensions",
            "--disable-default-apps", "--hide-scrollbars", "--mute-audio", "--disable-dev-shm-usage",
            "--host-resolver-rules=MAP * ~NOTFOUND", "--force-color-profile=srgb", "--font-render-hinting=none",
            "--lang=en-US", "about:blank")
NAMES = ("chromium", "chromium-browser")
LONGEST_WAIT_S = 60.0


class BrowserError(Exception):
    pass


def refuse_constant(word):
    raise BrowserError(f"the browser sent {word} for a number")


class Browser:
    """One browser process, to be used as a context: it ends, and its profile goes, when the context does."""

    def __init__(self, program=None):
        self.program = program or next(filter(None, map(shutil.which, NAMES)), None)
        if not self.program:
            raise BrowserError("no chromium here; .ci/setup installs it")
        self.events, self.waiting, self.number, self.rest = [], {}, 0, b""

    def __enter__(self):
        self.profile = tempfile.TemporaryDirectory(prefix="render-", ignore_cleanup_errors=True)
        read_there, self.write_end = os.pipe()
        self.read_end, write_there = os.pipe()
        # Away from 3 and 4 first, so that neither is written over before it has been copied.
        ends = [fcntl.fcntl(end, fcntl.F_DUPFD_CLOEXEC, 20) for end in (read_there, write_there)]
        os.close(read_there)
        os.close(write_there)

        def place():
            os.dup2(ends[0], 3)
            os.dup2(ends[1], 4)

        self.log = open(os.path.join(self.profile.name, "log"), "w+", encoding="utf-8", errors="replace")
        command = [self.program, *SWITCHES[:-1], f"--user-data-dir={self.profile.name}/profile", SWITCHES[-1]]
        # All other descriptors of this process close by themselves in the child.
        self.process = subprocess.Popen(command, preexec_fn=place, close_fds=False, stdin=subprocess.DEVNULL,
                                        stdout=self.log, stderr=self.log,
                                        env={**os.environ, "HOME": self.profile.name})
        for end in ends:
            os.close(end)
        self.version = self.call("Browser.getVersion")["product"]
        return self

    def __exit__(self, *_):
        try:
            self.call("Browser.close")
            self.process.wait(timeout=10)
        except (BrowserError, OSError, subprocess.TimeoutExpired):
            self.process.kill()
            self.process.wait()
        os.close(self.read_end)
        os.close(self.write_end)
        self.log.close()
        self.profile.cleanup()

    def last_words(self):
        self.log.flush()
        self.log.seek(0)
        return "\n".join(line for line in self.log.read().splitlines() if "dbus" not in line)[-2000:]

    def read_message(self, until):
        while b"\0" not in self.rest:
            ready, _, _ = select.select([self.read_end], [], [], max(0.0, until - time.monotonic()))
            if not ready:
                raise BrowserError(f"the browser said nothing for {LONGEST_WAIT_S:.0f} s")
            more = os.read(self.read_end, 1 << 20)
            if not more:
                raise BrowserError("the browser has gone: " + self.last_words())
            self.rest += more
        message, _, self.rest = self.rest.partition(b"\0")
        return json.loads(message, parse_constant=refuse_constant)

    def send(self, method, session=None, **parameters):
        self.number += 1
        message = {"id": self.number, "method": method, "params": parameters}
        if session:
            message["sessionId"] = session
        data = json.dumps(message).encode() + b"\0"
        while data:
            data = data[os.write(self.write_end, data):]
        return self.number

    def call(self, method, session=None, **parameters):
        """Sends one command and waits for its answer; what happens meanwhile is kept in `events`."""
        number = self.send(method, session, **parameters)
        until = time.monotonic() + LONGEST_WAIT_S
        while True:
            message = self.read_message(until)
            if message.get("id") == number:
                if "error" in message:
                    raise BrowserError(f"{method}: {message['error'].get('message')}")
                return message["result"]
            if "method" in message:
                self.events.append(message)

    def wait_for(self, method, session, start):
        """The first such event that stands at `start` or later in `events`."""
        until = time.monotonic() + LONGEST_WAIT_S
        while True:
            for event in self.events[start:]:
                if event["method"] == method and event.get("sessionId") == session:
                    return event["params"]
            start = len(self.events)
            message = self.read_message(until)
            if "method" in message:
                self.events.append(message)

    def tab(self):
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        return Tab(self, self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"])


class Tab:
    def __init__(self, browser, session):
        self.browser, self.session = browser, session
        for domain in ("Page", "Runtime", "Network", "Log"):
            self.call(f"{domain}.enable")

    def call(self, method, **parameters):
        return self.browser.call(method, self.session, **parameters)

    def open(self, url):
        """Loads a page to its end, whatever it waits for."""
        start = len(self.browser.events)
        fault = self.call("Page.navigate", url=url).get("errorText")
        if fault:
            raise BrowserError(f"{url}: {fault}")
        self.browser.wait_for("Page.loadEventFired", self.session, start)

    def ask(self, expression):
        """The value of an expression in the page; works where the page's own scripts are off."""
        found = self.call("Runtime.evaluate", expression=expression, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in found:
            details = found["exceptionDetails"]
            raise BrowserError(details.get("exception", {}).get("description") or details["text"])
        return found["result"].get("value")

    def take_events(self):
        """What has happened in this tab since it was asked last."""
        mine = [event for event in self.browser.events if event.get("sessionId") == self.session]
        self.browser.events = [event for event in self.browser.events if event.get("sessionId") != self.session]
        return mine

    def size(self, width, height, scale=1, mobile=False):
        self.call("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=scale,
                  mobile=mobile)

    def media(self, name):
        self.call("Emulation.setEmulatedMedia", media=name)

    def scripts(self, on):
        self.call("Emulation.setScriptExecutionDisabled", value=not on)
