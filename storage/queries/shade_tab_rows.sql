SELECT guide, place, name, colour
FROM shade_tab
ORDER BY guide, place
