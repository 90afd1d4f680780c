-- A line does what it says in the same statement, and nothing that is written is ever changed.
CREATE FUNCTION line_does() RETURNS trigger AS $$
BEGIN
    UPDATE holding SET amount = amount + NEW.amount, uncertainty = uncertainty + NEW.uncertainty,
        reserved = reserved + NEW.reserved WHERE number = NEW.holding;
    IF NEW.reserved <> 0 THEN
        INSERT INTO reservation (holder, holding, amount, movement)
            VALUES (NEW.holder, NEW.holding, 0, NEW.movement)
            ON CONFLICT (holder, holding) DO NOTHING;
        UPDATE reservation SET amount = amount + NEW.reserved, movement = NEW.movement
            WHERE holder = NEW.holder AND holding = NEW.holding;
    END IF;
    RETURN NEW;
END;
$$ LANGUAGE plpgsql;
CREATE TRIGGER line_does AFTER INSERT ON line FOR EACH ROW EXECUTE FUNCTION line_does();

CREATE FUNCTION never_changed() RETURNS trigger AS $$
BEGIN
    RAISE EXCEPTION 'movements are never changed';
END;
$$ LANGUAGE plpgsql;
CREATE TRIGGER movement_unchanged BEFORE UPDATE OR DELETE OR TRUNCATE ON movement EXECUTE FUNCTION never_changed();
CREATE TRIGGER line_unchanged BEFORE UPDATE OR DELETE OR TRUNCATE ON line EXECUTE FUNCTION never_changed();
CREATE TRIGGER order_change_unchanged BEFORE UPDATE OR DELETE OR TRUNCATE ON order_change EXECUTE FUNCTION never_changed();
CREATE TRIGGER cut_unchanged BEFORE UPDATE OR DELETE OR TRUNCATE ON cut EXECUTE FUNCTION never_changed();
CREATE TRIGGER cut_fate_unchanged BEFORE UPDATE OR DELETE OR TRUNCATE ON cut_fate EXECUTE FUNCTION never_changed();
CREATE TRIGGER reorder_point_unchanged BEFORE UPDATE OR DELETE OR TRUNCATE ON reorder_point EXECUTE FUNCTION never_changed();
