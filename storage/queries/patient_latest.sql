SELECT COALESCE(MAX(code), 'P00000') AS latest FROM patient
