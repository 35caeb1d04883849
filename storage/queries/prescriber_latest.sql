SELECT COALESCE(MAX(code), 'D00000') AS latest FROM prescriber
