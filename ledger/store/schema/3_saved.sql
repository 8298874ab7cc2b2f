-- Version 3: a quote is found by its request, and large contents are kept compressed.
--
-- Where a content has a size, `bytes` is a zlib stream of so many bytes, and `sha256` is theirs. The database's own shell
-- reads it by sqlar_uncompress(bytes, size), which takes bytes without a size as they are.
ALTER TABLE content ADD COLUMN size INTEGER CHECK (size > 0);

CREATE INDEX quote_of_request ON quote (request);
