SELECT digest, salt, content FROM sealed_text WHERE code = :code
