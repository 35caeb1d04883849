DELETE FROM shade_tab
WHERE guide = :guide
