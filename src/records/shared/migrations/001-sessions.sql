-- Sessions of all carts, event by event, as they stand in the session files.

CREATE TABLE sessions (
  id text PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 200),
  cart text NOT NULL,
  started text NOT NULL,
  shared_at timestamptz NOT NULL DEFAULT now()
);

-- The body is the line of the session file: text and not jsonb, since its hash is over its very bytes.
-- Each event points at the one before it by number and hash, and a number stands once, so no chain can fork.
CREATE TABLE events (
  session text NOT NULL REFERENCES sessions (id),
  seq integer NOT NULL CHECK (seq >= 1),
  prev_seq integer NOT NULL GENERATED ALWAYS AS (seq - 1) STORED,
  hash text NOT NULL CHECK (hash = encode(sha256(convert_to(body, 'UTF8')), 'hex')),
  prev text,
  body text NOT NULL,
  PRIMARY KEY (session, seq),
  UNIQUE (session, seq, hash),
  FOREIGN KEY (session, prev_seq, prev) REFERENCES events (session, seq, hash),
  CHECK ((seq = 1) = (prev IS NULL))
);

CREATE FUNCTION events_stay() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'events are only ever added' USING ERRCODE = 'integrity_constraint_violation';
END
$$;

CREATE TRIGGER events_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON events
  FOR EACH STATEMENT EXECUTE FUNCTION events_stay();
