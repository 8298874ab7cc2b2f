-- Version 4: an entry keeps the machine's own time as well, where that was behind the entry before it.
--
-- `written` never falls from one entry to the next. Where a clock was set back, it is the newest entry's time, and `clock`
-- is what the machine said. The hash of an entry covers it; entries without it are hashed as before.
ALTER TABLE entry ADD COLUMN clock INTEGER CHECK (clock < written);

DROP VIEW entries;
CREATE VIEW entries AS
    SELECT e.id AS entry, k.text AS kind, e.ref, e.day, e.month, s.text AS shift, c.text AS centre, o.text AS order_,
           b.text AS board, e.note, w.text AS who, datetime(e.written, 'unixepoch') AS written,
           datetime(e.clock, 'unixepoch') AS clock, e.reverses, e.content, lower(hex(e.hash)) AS hash
    FROM entry AS e
    JOIN name AS k ON k.id = e.kind JOIN name AS s ON s.id = e.shift JOIN name AS c ON c.id = e.centre
    JOIN name AS o ON o.id = e.order_ JOIN name AS b ON b.id = e.board JOIN name AS w ON w.id = e.who;
