-- Lengths are whole hundredths of a millimetre. What is on the shelf follows from the lines: see the triggers.
CREATE TABLE movement (
    number BIGINT NOT NULL PRIMARY KEY CHECK (number > 0),
    kind VARCHAR(20) NOT NULL CHECK (kind IN ('receive', 'count', 'quote', 'reserve', 'release', 'confirm', 'spoil',
        'pack', 'send', 'return', 'point', 'undo')),
    holder VARCHAR(400) NOT NULL,
    why VARCHAR(400) NOT NULL,
    who VARCHAR(400) NOT NULL,
    made_at VARCHAR(40) NOT NULL,
    request VARCHAR(400) NOT NULL UNIQUE CHECK (request <> ''),
    content VARCHAR(64) NOT NULL,
    undoes BIGINT UNIQUE REFERENCES movement (number),
    CHECK ((kind = 'undo') = (undoes IS NOT NULL)),
    CHECK (undoes IS NULL OR undoes < number)
);

CREATE TABLE holding (
    number BIGINT NOT NULL PRIMARY KEY CHECK (number > 0),
    id VARCHAR(400) UNIQUE,
    kind VARCHAR(20) NOT NULL CHECK (kind IN ('coil', 'plate', 'board', 'item', 'opened', 'offcut')),
    product VARCHAR(400) NOT NULL,
    length BIGINT NOT NULL CHECK (length >= 0),
    batch VARCHAR(400) NOT NULL,
    label VARCHAR(400) NOT NULL,
    made_by BIGINT NOT NULL REFERENCES movement (number),
    amount BIGINT DEFAULT 0 NOT NULL CHECK (amount >= 0),
    uncertainty BIGINT DEFAULT 0 NOT NULL CHECK (uncertainty >= 0),
    reserved BIGINT DEFAULT 0 NOT NULL CHECK (reserved >= 0),
    CHECK (reserved <= amount),
    CHECK (uncertainty <= amount),
    CHECK ((id IS NOT NULL) = (kind IN ('opened', 'offcut')))
);
CREATE UNIQUE INDEX one_lot ON holding (kind, product, length, batch) WHERE id IS NULL;
CREATE INDEX holding_of_product ON holding (product, kind);
CREATE INDEX holding_made_by ON holding (made_by);

CREATE TABLE line (
    movement BIGINT NOT NULL REFERENCES movement (number),
    number BIGINT NOT NULL CHECK (number > 0),
    holding BIGINT NOT NULL REFERENCES holding (number),
    amount BIGINT NOT NULL,
    uncertainty BIGINT NOT NULL,
    reserved BIGINT NOT NULL,
    holder VARCHAR(400) NOT NULL,
    PRIMARY KEY (movement, number),
    CHECK (reserved = 0 OR holder <> '')
);
CREATE INDEX line_of_holding ON line (holding, movement);
CREATE INDEX line_of_holder ON line (holder);

CREATE TABLE reservation (
    holder VARCHAR(400) NOT NULL,
    holding BIGINT NOT NULL REFERENCES holding (number),
    amount BIGINT NOT NULL CHECK (amount >= 0),
    movement BIGINT NOT NULL REFERENCES movement (number),
    PRIMARY KEY (holder, holding)
);
CREATE INDEX reservation_of_holding ON reservation (holding);

CREATE TABLE order_change (
    movement BIGINT NOT NULL REFERENCES movement (number),
    holder VARCHAR(400) NOT NULL CHECK (holder <> ''),
    state VARCHAR(20) NOT NULL CHECK (state IN ('unknown', 'quoted', 'confirmed', 'cut', 'packed', 'sent', 'returned')),
    fingerprint VARCHAR(400) NOT NULL,
    PRIMARY KEY (movement, holder)
);
CREATE INDEX order_change_of_holder ON order_change (holder, movement);

CREATE TABLE cut (
    movement BIGINT NOT NULL REFERENCES movement (number),
    number BIGINT NOT NULL CHECK (number > 0),
    holder VARCHAR(400) NOT NULL CHECK (holder <> ''),
    kind VARCHAR(20) NOT NULL CHECK (kind IN ('opened', 'offcut')),
    product VARCHAR(400) NOT NULL,
    batch VARCHAR(400) NOT NULL,
    length BIGINT NOT NULL CHECK (length > 0),
    goes_to VARCHAR(400) NOT NULL,
    cut_from VARCHAR(400) NOT NULL,
    PRIMARY KEY (movement, number)
);
CREATE INDEX cut_of_holder ON cut (holder);

CREATE TABLE cut_fate (
    movement BIGINT NOT NULL REFERENCES movement (number),
    cut_movement BIGINT NOT NULL,
    cut_number BIGINT NOT NULL,
    fate VARCHAR(20) NOT NULL CHECK (fate IN ('spoiled', 'back', 'reused')),
    PRIMARY KEY (movement, cut_movement, cut_number),
    FOREIGN KEY (cut_movement, cut_number) REFERENCES cut (movement, number)
);
CREATE INDEX fate_of_cut ON cut_fate (cut_movement, cut_number);

CREATE TABLE reorder_point (
    movement BIGINT NOT NULL PRIMARY KEY REFERENCES movement (number),
    kind VARCHAR(20) NOT NULL CHECK (kind IN ('coil', 'plate', 'board', 'item')),
    product VARCHAR(400) NOT NULL,
    length BIGINT NOT NULL CHECK (length >= 0),
    point BIGINT NOT NULL CHECK (point >= 0),
    pack BIGINT NOT NULL CHECK (pack >= 1),
    least BIGINT NOT NULL CHECK (least >= 0),
    days BIGINT NOT NULL CHECK (days >= 0)
);

CREATE TABLE piece_number (
    letter VARCHAR(4) NOT NULL PRIMARY KEY,
    last BIGINT NOT NULL CHECK (last >= 0)
);
