-- The laboratory's own shade guides, tab by tab.
-- needs 1
CREATE TABLE shade_guide (
    name TEXT PRIMARY KEY NOT NULL,
    source TEXT NOT NULL
)
-- next
CREATE TABLE shade_tab (
    guide TEXT NOT NULL REFERENCES shade_guide (name),
    place BIGINT NOT NULL,
    name TEXT NOT NULL,
    colour TEXT,
    PRIMARY KEY (guide, place),
    UNIQUE (guide, name)
)
