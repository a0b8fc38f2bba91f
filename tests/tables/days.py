"""Days and times of the clock in places whose clocks change.

    python days.py > days.tsv

From the time zone database of IANA as Python's zoneinfo reads it. Lines `at`: place, milliseconds since 1970, day and time
there. Lines `start`: place, when a day begins there in milliseconds since 1970, the day: found by looking at every minute.
Made with Python 3.11 and the 2026 rules of the United States and New Zealand; those of Brazil and Lebanon are of 2018.
"""

from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

# A month of each of these with a change of the clock, and one without.
MONTHS = [
    ("America/Los_Angeles", 2026, 3),
    ("America/Los_Angeles", 2026, 11),
    ("Pacific/Auckland", 2026, 4),
    ("Pacific/Auckland", 2026, 9),
    ("Pacific/Auckland", 2026, 11),
    ("America/Sao_Paulo", 2018, 11),
    ("Asia/Beirut", 2018, 3),
]

rows = []
for place, year, month in MONTHS:
    zone = ZoneInfo(place)
    first = datetime(year, month, 1, tzinfo=timezone.utc)
    seen = None
    for minute in range(30 * 24 * 60):
        at = first + timedelta(minutes=minute)
        there = at.astimezone(zone)
        ms = int(at.timestamp()) * 1000
        if minute % 907 == 0:
            rows.append(("at", place, ms, there.strftime("%Y-%m-%d"), there.strftime("%H:%M")))
        if seen is not None and there.date() > seen:
            rows.append(("start", place, ms, there.strftime("%Y-%m-%d")))
        seen = max(seen or there.date(), there.date())
for row in rows:
    print(*row, sep="\t")
