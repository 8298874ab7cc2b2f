-- Version 1: entries, what they moved, expected and counted, the totals of their months, and which months are closed.
--
-- What was posted is never changed or deleted; corrections are added. The triggers below refuse it to whoever opens the
-- file, and the hash chain shows it where somebody took them away first. Masses are whole grams, money is whole
-- ten-thousandths of the plant's currency, days are numbers like 20261015, months 202610, times seconds since 1970.

-- Every name once: kinds, accounts, materials, causes, shifts, centres, orders, boards, people. 0 is no name.
CREATE TABLE name (
    id   INTEGER PRIMARY KEY,
    text TEXT NOT NULL UNIQUE CHECK (length(text) <= 200)
) STRICT;
INSERT INTO name VALUES (0, '');

-- One document row each, numbered from 1 without a gap. shift, centre, order_, board, kind and who are names.
CREATE TABLE entry (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    kind     INTEGER NOT NULL,
    ref      TEXT NOT NULL CHECK (length(ref) BETWEEN 1 AND 200),
    content  TEXT NOT NULL CHECK (length(content) <= 100000),
    day      INTEGER NOT NULL CHECK (day BETWEEN 20000101 AND 29991231),
    month    INTEGER NOT NULL GENERATED ALWAYS AS (day / 100) VIRTUAL,
    shift    INTEGER NOT NULL,
    centre   INTEGER NOT NULL,
    order_   INTEGER NOT NULL,
    board    INTEGER NOT NULL,
    note     TEXT NOT NULL CHECK (length(note) <= 10000),
    who      INTEGER NOT NULL,
    written  INTEGER NOT NULL,
    reverses INTEGER REFERENCES entry (id) DEFERRABLE INITIALLY DEFERRED CHECK (reverses < id),
    hash     BLOB NOT NULL CHECK (length(hash) = 32),
    UNIQUE (kind, ref)
) STRICT;
CREATE UNIQUE INDEX entry_reversed ON entry (reverses) WHERE reverses IS NOT NULL;
CREATE INDEX entry_of_month ON entry (month, order_);

-- Movement k of entry n has the number 1000 n + k, k from 0. A negative mass is a movement back.
CREATE TABLE movement (
    id           INTEGER PRIMARY KEY,
    entry        INTEGER NOT NULL GENERATED ALWAYS AS (id / 1000) VIRTUAL,
    from_account INTEGER NOT NULL,
    to_account   INTEGER NOT NULL CHECK (to_account <> from_account),
    material     INTEGER NOT NULL,
    cause        INTEGER NOT NULL,
    grams        INTEGER NOT NULL CHECK (grams BETWEEN -1000000000000 AND 1000000000000),
    money        INTEGER NOT NULL CHECK (money BETWEEN -900000000000000 AND 900000000000000),
    day          INTEGER NOT NULL
) STRICT;
-- What a material cost when it last moved.
CREATE INDEX movement_priced ON movement (from_account, to_account, material, day) WHERE cause = 0 AND money <> 0;

-- What causes were allowed to lose by an entry; numbered as movements are.
CREATE TABLE expected (
    id    INTEGER PRIMARY KEY,
    entry INTEGER NOT NULL GENERATED ALWAYS AS (id / 1000) VIRTUAL,
    cause INTEGER NOT NULL,
    grams INTEGER NOT NULL CHECK (grams BETWEEN -1000000000000 AND 1000000000000)
) STRICT;

-- What an entry counted. money: where the count opens the account.
CREATE TABLE stock_count (
    entry    INTEGER PRIMARY KEY,
    day      INTEGER NOT NULL,
    account  INTEGER NOT NULL,
    material INTEGER NOT NULL,
    grams    INTEGER NOT NULL CHECK (grams BETWEEN -1000000000000 AND 1000000000000),
    money    INTEGER CHECK (money BETWEEN -900000000000000 AND 900000000000000)
) STRICT;
CREATE INDEX stock_count_of_day ON stock_count (day);
CREATE INDEX stock_count_of_account ON stock_count (account, day);

-- Totals of a month, added to in the same transaction as the entries: they can be worked out from them at any time.
CREATE TABLE month_flow (
    month        INTEGER NOT NULL,
    from_account INTEGER NOT NULL,
    to_account   INTEGER NOT NULL,
    material     INTEGER NOT NULL,
    cause        INTEGER NOT NULL,
    movements    INTEGER NOT NULL CHECK (movements > 0),
    grams        INTEGER NOT NULL,
    money        INTEGER NOT NULL,
    PRIMARY KEY (month, from_account, to_account, material, cause)
) STRICT, WITHOUT ROWID;

-- The same without the material, by what the entries say of themselves.
CREATE TABLE month_detail (
    month        INTEGER NOT NULL,
    centre       INTEGER NOT NULL,
    shift        INTEGER NOT NULL,
    board        INTEGER NOT NULL,
    from_account INTEGER NOT NULL,
    to_account   INTEGER NOT NULL,
    cause        INTEGER NOT NULL,
    movements    INTEGER NOT NULL CHECK (movements > 0),
    grams        INTEGER NOT NULL,
    money        INTEGER NOT NULL,
    PRIMARY KEY (month, centre, shift, board, from_account, to_account, cause)
) STRICT, WITHOUT ROWID;

CREATE TABLE month_expected (
    month  INTEGER NOT NULL,
    centre INTEGER NOT NULL,
    shift  INTEGER NOT NULL,
    board  INTEGER NOT NULL,
    cause  INTEGER NOT NULL,
    losses INTEGER NOT NULL CHECK (losses > 0),
    grams  INTEGER NOT NULL,
    PRIMARY KEY (month, centre, shift, board, cause)
) STRICT, WITHOUT ROWID;

-- What every account held of every material when a closed month ended.
CREATE TABLE seal_stock (
    month    INTEGER NOT NULL,
    account  INTEGER NOT NULL,
    material INTEGER NOT NULL,
    grams    INTEGER NOT NULL,
    money    INTEGER NOT NULL,
    PRIMARY KEY (month, account, material)
) STRICT, WITHOUT ROWID;

-- A closed month and the entry that closed it.
CREATE TABLE seal (
    month INTEGER PRIMARY KEY,
    entry INTEGER NOT NULL UNIQUE REFERENCES entry (id)
) STRICT;

CREATE TRIGGER entry_guard BEFORE INSERT ON entry BEGIN
    SELECT RAISE(ROLLBACK, 'an entry has the number after the newest')
        WHERE NEW.id - 1 IS NOT (SELECT coalesce(max(id), 0) FROM entry);
    SELECT RAISE(ROLLBACK, 'the month is closed') WHERE NEW.day / 100 <= (SELECT max(month) FROM seal);
    SELECT RAISE(ROLLBACK, 'an entry is not older than the one before it')
        WHERE NEW.written < (SELECT written FROM entry WHERE id = NEW.id - 1);
END;
CREATE TRIGGER seal_guard BEFORE INSERT ON seal BEGIN
    SELECT RAISE(ROLLBACK, 'months are closed in their order') WHERE NEW.month <= (SELECT max(month) FROM seal);
    SELECT RAISE(ROLLBACK, 'a month is closed by the newest entry')
        WHERE NEW.entry IS NOT (SELECT max(id) FROM entry) OR
              NEW.month IS NOT (SELECT month FROM entry WHERE id = NEW.entry);
END;
CREATE TRIGGER seal_stock_guard BEFORE INSERT ON seal_stock WHEN NEW.month <= (SELECT max(month) FROM seal) BEGIN
    SELECT RAISE(ROLLBACK, 'the month is closed');
END;
CREATE TRIGGER name_guard BEFORE INSERT ON name WHEN EXISTS (SELECT 1 FROM name WHERE id = NEW.id OR text = NEW.text)
BEGIN
    SELECT RAISE(ROLLBACK, 'a name is never changed');
END;

CREATE TRIGGER name_is_kept BEFORE UPDATE ON name
    BEGIN SELECT RAISE(ROLLBACK, 'a name is never changed'); END;
CREATE TRIGGER name_stays BEFORE DELETE ON name
    BEGIN SELECT RAISE(ROLLBACK, 'a name is never deleted'); END;
CREATE TRIGGER entry_is_kept BEFORE UPDATE ON entry
    BEGIN SELECT RAISE(ROLLBACK, 'an entry is never changed; reverse it'); END;
CREATE TRIGGER entry_stays BEFORE DELETE ON entry
    BEGIN SELECT RAISE(ROLLBACK, 'an entry is never deleted; reverse it'); END;
CREATE TRIGGER movement_is_kept BEFORE UPDATE ON movement
    BEGIN SELECT RAISE(ROLLBACK, 'an entry is never changed; reverse it'); END;
CREATE TRIGGER movement_stays BEFORE DELETE ON movement
    BEGIN SELECT RAISE(ROLLBACK, 'an entry is never deleted; reverse it'); END;
CREATE TRIGGER expected_is_kept BEFORE UPDATE ON expected
    BEGIN SELECT RAISE(ROLLBACK, 'an entry is never changed; reverse it'); END;
CREATE TRIGGER expected_stays BEFORE DELETE ON expected
    BEGIN SELECT RAISE(ROLLBACK, 'an entry is never deleted; reverse it'); END;
CREATE TRIGGER stock_count_is_kept BEFORE UPDATE ON stock_count
    BEGIN SELECT RAISE(ROLLBACK, 'an entry is never changed; reverse it'); END;
CREATE TRIGGER stock_count_stays BEFORE DELETE ON stock_count
    BEGIN SELECT RAISE(ROLLBACK, 'an entry is never deleted; reverse it'); END;
CREATE TRIGGER seal_is_kept BEFORE UPDATE ON seal
    BEGIN SELECT RAISE(ROLLBACK, 'a closed month stays closed'); END;
CREATE TRIGGER seal_stays BEFORE DELETE ON seal
    BEGIN SELECT RAISE(ROLLBACK, 'a closed month stays closed'); END;
CREATE TRIGGER seal_stock_is_kept BEFORE UPDATE ON seal_stock
    BEGIN SELECT RAISE(ROLLBACK, 'a closed month stays closed'); END;
CREATE TRIGGER seal_stock_stays BEFORE DELETE ON seal_stock
    BEGIN SELECT RAISE(ROLLBACK, 'a closed month stays closed'); END;
CREATE TRIGGER month_flow_stays BEFORE DELETE ON month_flow
    BEGIN SELECT RAISE(ROLLBACK, 'totals are only added to'); END;
CREATE TRIGGER month_detail_stays BEFORE DELETE ON month_detail
    BEGIN SELECT RAISE(ROLLBACK, 'totals are only added to'); END;
CREATE TRIGGER month_expected_stays BEFORE DELETE ON month_expected
    BEGIN SELECT RAISE(ROLLBACK, 'totals are only added to'); END;

-- For people: names in place of numbers.
CREATE VIEW entries AS
    SELECT e.id AS entry, k.text AS kind, e.ref, e.day, e.month, s.text AS shift, c.text AS centre, o.text AS order_,
           b.text AS board, e.note, w.text AS who, datetime(e.written, 'unixepoch') AS written, e.reverses, e.content,
           lower(hex(e.hash)) AS hash
    FROM entry AS e
    JOIN name AS k ON k.id = e.kind JOIN name AS s ON s.id = e.shift JOIN name AS c ON c.id = e.centre
    JOIN name AS o ON o.id = e.order_ JOIN name AS b ON b.id = e.board JOIN name AS w ON w.id = e.who;
CREATE VIEW movements AS
    SELECT m.entry, m.id % 1000 AS line, m.day, m.day / 100 AS month, f.text AS from_account, t.text AS to_account,
           a.text AS material, c.text AS cause, m.grams, m.money
    FROM movement AS m
    JOIN name AS f ON f.id = m.from_account JOIN name AS t ON t.id = m.to_account
    JOIN name AS a ON a.id = m.material JOIN name AS c ON c.id = m.cause;
