DELETE FROM credential
WHERE person = :person
