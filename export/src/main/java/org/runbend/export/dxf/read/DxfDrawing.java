package org.runbend.export.dxf.read;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a drawing holds in model space.
 *
 * @param version as in $ACADVER; empty if the file does not say
 * @param unit unit of its header, if it has one
 * @param metric whether $MEASUREMENT says metric (1) or imperial (0), which is a hint only
 * @param entities in the order of the file, blocks inserted
 * @param counts entities of model space by type as written, before blocks are inserted
 * @param ignored what is visible but was not understood or has no size, by type
 * @param hidden entities on frozen or switched-off layers, by layer
 * @param paper entities of paper space
 * @param notes what Runbend wrote for itself beside an entity of its own drawings, by the number of the entity
 * @param remarks what else a person should know, one sentence each
 */
public record DxfDrawing(
        String version,
        Optional<DrawingUnit> unit,
        Optional<Boolean> metric,
        List<DxfEntity> entities,
        SortedMap<String, Integer> counts,
        SortedMap<String, Integer> ignored,
        SortedMap<String, Integer> hidden,
        int paper,
        SortedMap<Integer, List<String>> notes,
        List<String> remarks) {
    /** Copies. */
    public DxfDrawing {
        entities = List.copyOf(entities);
        counts = Collections.unmodifiableSortedMap(new TreeMap<>(counts));
        ignored = Collections.unmodifiableSortedMap(new TreeMap<>(ignored));
        hidden = Collections.unmodifiableSortedMap(new TreeMap<>(hidden));
        notes = Collections.unmodifiableSortedMap(new TreeMap<>(notes));
        remarks = List.copyOf(remarks);
    }
}
