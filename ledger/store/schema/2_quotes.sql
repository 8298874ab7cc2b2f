-- Version 2: saved quotes and the orders taken from them, as they were, for ever.
--
-- A part is any bytes under a name; equal bytes are stored once, under their SHA-256. Quotes and orders are each a
-- chain of their own, whose heads stand in the entry that closes a month.

CREATE TABLE content (
    id     INTEGER PRIMARY KEY,
    sha256 BLOB NOT NULL UNIQUE CHECK (length(sha256) = 32),
    bytes  BLOB NOT NULL
) STRICT;

-- Quote 1 is Q000001. who is a name.
CREATE TABLE quote (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    request TEXT NOT NULL CHECK (length(request) <= 200),
    who     INTEGER NOT NULL REFERENCES name (id),
    written INTEGER NOT NULL,
    hash    BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT;

-- Part k of quote n has the number 1000 n + k, k from 0.
CREATE TABLE quote_part (
    id      INTEGER PRIMARY KEY,
    quote   INTEGER NOT NULL GENERATED ALWAYS AS (id / 1000) VIRTUAL,
    name    TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
    content INTEGER NOT NULL REFERENCES content (id)
) STRICT;

CREATE TABLE taken_order (
    id       INTEGER PRIMARY KEY CHECK (id > 0),
    number   TEXT NOT NULL UNIQUE CHECK (length(number) BETWEEN 1 AND 200),
    quote    INTEGER NOT NULL REFERENCES quote (id),
    quantity INTEGER NOT NULL CHECK (quantity > 0),
    who      INTEGER NOT NULL REFERENCES name (id),
    written  INTEGER NOT NULL,
    hash     BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT;

CREATE TABLE taken_order_part (
    id          INTEGER PRIMARY KEY,
    taken_order INTEGER NOT NULL GENERATED ALWAYS AS (id / 1000) VIRTUAL,
    name        TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 200),
    content     INTEGER NOT NULL REFERENCES content (id)
) STRICT;

CREATE TRIGGER content_guard BEFORE INSERT ON content
    WHEN EXISTS (SELECT 1 FROM content WHERE id = NEW.id OR sha256 = NEW.sha256) BEGIN
    SELECT RAISE(ROLLBACK, 'what was saved is never changed');
END;
CREATE TRIGGER quote_guard BEFORE INSERT ON quote WHEN NEW.id - 1 IS NOT (SELECT coalesce(max(id), 0) FROM quote) BEGIN
    SELECT RAISE(ROLLBACK, 'a quote has the number after the newest');
END;
CREATE TRIGGER quote_part_guard BEFORE INSERT ON quote_part
    WHEN EXISTS (SELECT 1 FROM quote_part WHERE id = NEW.id) BEGIN
    SELECT RAISE(ROLLBACK, 'a saved quote is never changed');
END;
CREATE TRIGGER taken_order_guard BEFORE INSERT ON taken_order
    WHEN NEW.id - 1 IS NOT (SELECT coalesce(max(id), 0) FROM taken_order) OR
         EXISTS (SELECT 1 FROM taken_order WHERE number = NEW.number) BEGIN
    SELECT RAISE(ROLLBACK, 'an order is taken once');
END;
CREATE TRIGGER taken_order_part_guard BEFORE INSERT ON taken_order_part
    WHEN EXISTS (SELECT 1 FROM taken_order_part WHERE id = NEW.id) BEGIN
    SELECT RAISE(ROLLBACK, 'an order is never changed');
END;

CREATE TRIGGER content_is_kept BEFORE UPDATE ON content
    BEGIN SELECT RAISE(ROLLBACK, 'what was saved is never changed'); END;
CREATE TRIGGER content_stays BEFORE DELETE ON content
    BEGIN SELECT RAISE(ROLLBACK, 'what was saved is never deleted'); END;
CREATE TRIGGER quote_is_kept BEFORE UPDATE ON quote
    BEGIN SELECT RAISE(ROLLBACK, 'a saved quote is never changed'); END;
CREATE TRIGGER quote_stays BEFORE DELETE ON quote
    BEGIN SELECT RAISE(ROLLBACK, 'a saved quote is never deleted'); END;
CREATE TRIGGER quote_part_is_kept BEFORE UPDATE ON quote_part
    BEGIN SELECT RAISE(ROLLBACK, 'a saved quote is never changed'); END;
CREATE TRIGGER quote_part_stays BEFORE DELETE ON quote_part
    BEGIN SELECT RAISE(ROLLBACK, 'a saved quote is never deleted'); END;
CREATE TRIGGER taken_order_is_kept BEFORE UPDATE ON taken_order
    BEGIN SELECT RAISE(ROLLBACK, 'an order is never changed'); END;
CREATE TRIGGER taken_order_stays BEFORE DELETE ON taken_order
    BEGIN SELECT RAISE(ROLLBACK, 'an order is never deleted'); END;
CREATE TRIGGER taken_order_part_is_kept BEFORE UPDATE ON taken_order_part
    BEGIN SELECT RAISE(ROLLBACK, 'an order is never changed'); END;
CREATE TRIGGER taken_order_part_stays BEFORE DELETE ON taken_order_part
    BEGIN SELECT RAISE(ROLLBACK, 'an order is never deleted'); END;
