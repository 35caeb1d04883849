SELECT name, content
FROM setting
ORDER BY name
