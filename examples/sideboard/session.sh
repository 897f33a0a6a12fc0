# A sideboard from spraying to the last look. Run it in this folder: sh session.sh
# It writes sideboard.jsonl and shop.json here. session.txt holds what it prints, and a test compares the two.
levigate() { python -m levigate "$@"; }

# How much to mix, before there is a film.
levigate spray sideboard.json drawer.json

# The coat is cured. What is in the drawer, what is the plan, and is there paper enough?
levigate check drawer.json
levigate plan sideboard.json drawer.json
levigate buy sideboard.json drawer.json

# The gauge on the bare coat reads thinner than three coats should be. It counts at once.
levigate record sideboard.jsonl "film read" --check sideboard.json drawer.json --at 2026-03-02T08:00:00Z --zone doors --readings-um 61 66 63
levigate record sideboard.jsonl "film read" --check sideboard.json drawer.json --at 2026-03-02T08:05:00Z --zone doors --readings-um 64 60 67
levigate plan sideboard.json drawer.json --after sideboard.jsonl

# An hour into the first step: when is it done?
levigate record sideboard.jsonl "step begun" --check sideboard.json drawer.json --at 2026-03-02T08:10:00Z --sheet p600 --minutes 60
levigate when-done sideboard.json drawer.json --journal sideboard.jsonl

# The first step took longer. A wrong line is struck, and nothing is deleted.
levigate record sideboard.jsonl "step ended" --check sideboard.json drawer.json --at 2026-03-02T19:00:00Z --sheet p600 --minutes 60 --sheets-used 9
levigate record sideboard.jsonl struck --check sideboard.json drawer.json --at 2026-03-02T19:01:00Z --line 4 --text "minutes of another day"
levigate record sideboard.jsonl "step ended" --check sideboard.json drawer.json --at 2026-03-02T19:02:00Z --sheet p600 --minutes 620 --sheets-used 9
levigate plan sideboard.json drawer.json --after sideboard.jsonl

# The gauge on the sanded top, twice. The last look: a scratch in the sun.
levigate record sideboard.jsonl "film read" --check sideboard.json drawer.json --at 2026-03-03T11:00:00Z --zone top --readings-um 52 57 55
levigate record sideboard.jsonl "film read" --check sideboard.json drawer.json --at 2026-03-03T11:05:00Z --zone top --readings-um 56 54 58
levigate record sideboard.jsonl "mark found" --check sideboard.json drawer.json --at 2026-03-03T11:30:00Z --mark scratch --zone top --seen sunlight
levigate go-back sideboard.json drawer.json --journal sideboard.jsonl

# The next sideboard is planned at this pace.
levigate learn sideboard.json drawer.json sideboard.jsonl --shop shop.json
levigate plan sideboard.json drawer.json --shop shop.json
