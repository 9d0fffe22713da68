-- A session belongs to the role that shared it first, and only that role adds to it. The owner of the tables is above
-- this. Sessions from before belong to nobody until the owner says whose they are.

ALTER TABLE sessions ADD COLUMN owner name;
ALTER TABLE sessions ALTER COLUMN owner SET DEFAULT current_user;

ALTER TABLE sessions ENABLE ROW LEVEL SECURITY;
ALTER TABLE events ENABLE ROW LEVEL SECURITY;
CREATE POLICY everybody_reads ON sessions FOR SELECT USING (true);
CREATE POLICY everybody_reads ON events FOR SELECT USING (true);
CREATE POLICY own_only ON sessions FOR INSERT WITH CHECK (owner = current_user);
CREATE POLICY own_only ON events FOR INSERT WITH CHECK (
  EXISTS (SELECT FROM sessions WHERE sessions.id = events.session AND sessions.owner = current_user)
);

-- Where the database and a file differ the owner of the tables decides. What is taken out is kept here.
CREATE TABLE events_set_aside (
  session text NOT NULL,
  seq integer NOT NULL,
  hash text NOT NULL,
  prev text,
  body text NOT NULL,
  set_by name NOT NULL DEFAULT current_user,
  set_at timestamptz NOT NULL DEFAULT now()
);

CREATE FUNCTION set_events_aside(which text, from_seq integer) RETURNS bigint LANGUAGE plpgsql AS $$
DECLARE
  moved bigint;
BEGIN
  INSERT INTO events_set_aside (session, seq, hash, prev, body)
    SELECT session, seq, hash, prev, body FROM events WHERE session = which AND seq >= from_seq;
  GET DIAGNOSTICS moved = ROW_COUNT;
  ALTER TABLE events DISABLE TRIGGER events_stay;
  DELETE FROM events WHERE session = which AND seq >= from_seq;
  ALTER TABLE events ENABLE TRIGGER events_stay;
  -- Nothing of it is left: the cart whose session it truly is may share it anew.
  IF from_seq <= 1 THEN
    DELETE FROM sessions WHERE id = which;
  END IF;
  RETURN moved;
END
$$;
REVOKE ALL ON FUNCTION set_events_aside(text, integer) FROM PUBLIC;
