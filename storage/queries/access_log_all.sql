SELECT position, at_us, person, station, kind, about, bytes, hash
FROM access_log
ORDER BY position
