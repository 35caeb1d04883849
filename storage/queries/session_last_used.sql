SELECT person, MAX(last_used_us) AS last_used_us
FROM session
GROUP BY person
ORDER BY person
