-- A line does what it says in the same statement, and nothing that is written is ever changed.
CREATE TRIGGER line_does AFTER INSERT ON line
BEGIN
    UPDATE holding SET amount = amount + NEW.amount, uncertainty = uncertainty + NEW.uncertainty,
        reserved = reserved + NEW.reserved WHERE number = NEW.holding;
    INSERT INTO reservation (holder, holding, amount, movement)
        SELECT NEW.holder, NEW.holding, 0, NEW.movement WHERE NEW.reserved <> 0
        ON CONFLICT (holder, holding) DO NOTHING;
    UPDATE reservation SET amount = amount + NEW.reserved, movement = NEW.movement
        WHERE NEW.reserved <> 0 AND holder = NEW.holder AND holding = NEW.holding;
END;

CREATE TRIGGER movement_no_update BEFORE UPDATE ON movement
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER movement_no_delete BEFORE DELETE ON movement
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER line_no_update BEFORE UPDATE ON line
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER line_no_delete BEFORE DELETE ON line
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER order_change_no_update BEFORE UPDATE ON order_change
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER order_change_no_delete BEFORE DELETE ON order_change
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER cut_no_update BEFORE UPDATE ON cut
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER cut_no_delete BEFORE DELETE ON cut
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER cut_fate_no_update BEFORE UPDATE ON cut_fate
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER cut_fate_no_delete BEFORE DELETE ON cut_fate
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER reorder_point_no_update BEFORE UPDATE ON reorder_point
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
CREATE TRIGGER reorder_point_no_delete BEFORE DELETE ON reorder_point
BEGIN
    SELECT RAISE(ABORT, 'movements are never changed');
END;
