INSERT INTO access_log (position, at_us, person, station, kind, about, bytes, hash)
VALUES (:position, :at_us, :person, :station, :kind, :about, :bytes, :hash)
