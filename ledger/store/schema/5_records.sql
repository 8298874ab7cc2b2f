-- Version 5: what is said of a saved quote after its parts: what it is found by, and what became of it.
--
-- A record says attributes of one quote: names with a text or a whole number each. Records are only added, and are a
-- chain of their own, whose head stands in the entries of kind `saved`. The kinds, the names and what they mean are
-- those of whoever saves.
CREATE TABLE quote_record (
    id      INTEGER PRIMARY KEY CHECK (id > 0),
    quote   INTEGER NOT NULL REFERENCES quote (id),
    kind    INTEGER NOT NULL REFERENCES name (id),
    who     INTEGER NOT NULL REFERENCES name (id),
    written INTEGER NOT NULL,
    hash    BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT;
CREATE INDEX quote_record_of_kind ON quote_record (kind, quote);
CREATE INDEX quote_record_of_quote ON quote_record (quote);

-- Attribute k of record n has the number 1000 n + k, k from 0. `quote` is the record's.
CREATE TABLE quote_attribute (
    id     INTEGER PRIMARY KEY,
    record INTEGER NOT NULL GENERATED ALWAYS AS (id / 1000) VIRTUAL,
    quote  INTEGER NOT NULL REFERENCES quote (id),
    name   INTEGER NOT NULL REFERENCES name (id),
    text   TEXT CHECK (length(text) <= 10000),
    number INTEGER,
    CHECK ((text IS NULL) <> (number IS NULL))
) STRICT;
CREATE INDEX quote_attribute_of_quote ON quote_attribute (quote, name);
CREATE INDEX quote_attribute_text ON quote_attribute (name, text, quote) WHERE text IS NOT NULL;
CREATE INDEX quote_attribute_number ON quote_attribute (name, number, quote) WHERE number IS NOT NULL;

CREATE INDEX quote_of_time ON quote (written);

CREATE TRIGGER quote_record_guard BEFORE INSERT ON quote_record
    WHEN NEW.id - 1 IS NOT (SELECT coalesce(max(id), 0) FROM quote_record) BEGIN
    SELECT RAISE(ROLLBACK, 'a record of a quote has the number after the newest');
END;
CREATE TRIGGER quote_attribute_guard BEFORE INSERT ON quote_attribute
    WHEN EXISTS (SELECT 1 FROM quote_attribute WHERE id = NEW.id) BEGIN
    SELECT RAISE(ROLLBACK, 'a record of a quote is never changed');
END;
CREATE TRIGGER quote_record_is_kept BEFORE UPDATE ON quote_record
    BEGIN SELECT RAISE(ROLLBACK, 'a record of a quote is never changed'); END;
CREATE TRIGGER quote_record_stays BEFORE DELETE ON quote_record
    BEGIN SELECT RAISE(ROLLBACK, 'a record of a quote is never deleted'); END;
CREATE TRIGGER quote_attribute_is_kept BEFORE UPDATE ON quote_attribute
    BEGIN SELECT RAISE(ROLLBACK, 'a record of a quote is never changed'); END;
CREATE TRIGGER quote_attribute_stays BEFORE DELETE ON quote_attribute
    BEGIN SELECT RAISE(ROLLBACK, 'a record of a quote is never deleted'); END;
