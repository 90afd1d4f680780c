package org.runbend.export.dxf.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads a drawing, ASCII or binary, R9 to 2018. Forgiving where a file is odd, strict where numbers are at stake: what
 * cannot be used is a {@link DxfFault} of one line that names the place. A 50 MB file takes a second or two and about
 * ten times its size in memory.
 */
public final class DxfReader {
    private final DxfLimits limits;

    /** A reader with the standard limits. */
    public DxfReader() {
        this(DxfLimits.standard());
    }

    /** A reader with limits of its own. */
    public DxfReader(DxfLimits limits) {
        this.limits = limits;
    }

    /**
     * Reads a file.
     *
     * @param unit the unit to go by in place of the header's, for the tolerance of chords
     * @throws DxfFault if it cannot be read; the message begins with the file as it was named
     */
    public DxfDrawing read(Path file, Optional<DrawingUnit> unit) {
        try {
            if (Files.isDirectory(file)) {
                throw new DxfFault("this is a folder; name a drawing");
            }
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                throw new DxfFault("this is no regular file; name a drawing"); // a pipe or a device may never end
            }
            if (Files.size(file) > limits.bytes()) {
                throw tooLarge(Files.size(file));
            }
            return read(Files.readAllBytes(file), unit);
        } catch (DxfFault e) {
            throw e.in(file.toString());
        } catch (NoSuchFileException e) {
            throw new DxfFault("there is no such file").in(file.toString());
        } catch (IOException e) {
            throw new DxfFault("the file cannot be read").in(file.toString());
        }
    }

    /**
     * Reads the bytes of a file. Without any unit chords are as fine as if it were mm.
     *
     * @throws DxfFault if they cannot be read; the message begins with the place
     */
    public DxfDrawing read(byte[] data, Optional<DrawingUnit> unit) {
        if (data.length > limits.bytes()) {
            throw tooLarge(data.length);
        }
        TagSource source = source(data);
        Parsed parsed = new DrawingParser(source).parse();
        double mm = unit.or(() -> parsed.unit).map(DrawingUnit::mm).orElse(1.0);
        ModelSpace modelSpace = new ModelSpace(parsed, limits, source, mm);
        modelSpace.run();
        return new DxfDrawing(
                parsed.version,
                parsed.unit,
                parsed.metric,
                modelSpace.entities,
                parsed.counts,
                modelSpace.ignored,
                modelSpace.hidden,
                parsed.paper,
                modelSpace.notes,
                remarks(parsed, modelSpace));
    }

    private DxfFault tooLarge(long bytes) {
        return new DxfFault("the file has " + bytes + " bytes, at most " + limits.bytes() + " are read");
    }

    private static TagSource source(byte[] data) {
        if (data.length == 0) {
            throw new DxfFault("the file is empty");
        }
        if (BinaryTags.isBinary(data)) {
            return new BinaryTags(data);
        }
        String beginning = AsciiTags.beginning(data);
        int start = beginning.startsWith("\u00EF\u00BB\u00BF") ? 3 : 0;
        if (beginning.startsWith("AC10") && !AsciiTags.beginsWithCode(data, start)) {
            throw new DxfFault("this is a DWG file; save it as DXF");
        }
        if (!AsciiTags.beginsWithCode(data, start)) {
            throw new DxfFault(
                    "this is no DXF file: it begins with " + DxfFault.quoted(beginning) + ", a group code is wanted");
        }
        return new AsciiTags(data, start);
    }

    private static List<String> remarks(Parsed parsed, ModelSpace modelSpace) {
        List<String> remarks = new ArrayList<>();
        if (parsed.invisible > 0) {
            remarks.add(parsed.invisible + " invisible entities were left out");
        }
        modelSpace.missing.forEach(name ->
                remarks.add("block " + DxfFault.quoted(name) + " is not in the file; what it shows is missing"));
        return remarks;
    }
}
