SELECT shade_guide.name AS guide, shade_guide.source, shade_tab.name, shade_tab.colour
FROM shade_guide
JOIN shade_tab ON shade_tab.guide = shade_guide.name
ORDER BY shade_guide.name, shade_tab.place
