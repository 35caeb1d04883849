SELECT COALESCE(MAX(code), 'T000000') AS latest FROM sealed_text
