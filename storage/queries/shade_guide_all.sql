SELECT name, source
FROM shade_guide
ORDER BY name
