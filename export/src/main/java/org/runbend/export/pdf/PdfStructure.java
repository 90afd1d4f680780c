package org.runbend.export.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;

/**
 * The logical structure of a document (ISO 32000-1, 14.7): a tree of parts, and which marks on which page belong to which.
 * Where no part is entered, a line of text is a paragraph of its own and a drawing a figure; lines and fills are artifacts.
 */
final class PdfStructure {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PdfPart whole;
    private final IdentityHashMap<PDPage, List<PDStructureElement>> marks = new IdentityHashMap<>();
    private final List<PDPage> order = new ArrayList<>();
    private PdfPart current;
    private boolean aside;

    PdfStructure() {
        PDStructureElement document = new PDStructureElement("Document", root);
        root.appendKid(document);
        whole = new PdfPart(document);
    }

    /** The whole document. */
    PdfPart whole() {
        return whole;
    }

    /** Enters a part, or none with null; gives back the one entered before. */
    PdfPart enter(PdfPart part) {
        PdfPart before = current;
        current = part;
        return before;
    }

    /** From here on nothing is read, such as footers. */
    void setAside() {
        aside = true;
    }

    /** Does a drawing within the part entered, else within one of its own. */
    void within(PdfRole role, String words, Runnable drawing) {
        if (current != null || aside) {
            drawing.run();
            return;
        }
        current = whole.part(role);
        if (!words.isEmpty()) {
            current.describe(words);
        }
        drawing.run();
        current = null;
    }

    /** Begins marked content on a page. */
    void begin(PDPage page, PDPageContentStream out) throws IOException {
        if (current == null || aside) {
            out.beginMarkedContent(COSName.ARTIFACT);
            return;
        }
        List<PDStructureElement> owners = marks.computeIfAbsent(page, p -> {
            order.add(p);
            return new ArrayList<>();
        });
        PDStructureElement owner = current.element();
        out.beginMarkedContent(COSName.getPDFName(owner.getStructureType()), owners.size());
        PDMarkedContentReference reference = new PDMarkedContentReference();
        reference.setPage(page);
        reference.setMCID(owners.size());
        owner.appendKid(reference);
        owners.add(owner);
    }

    /** Puts the tree into a document that is complete. */
    void close(PDDocument document) {
        Map<Integer, PDParentTreeValue> parents = new TreeMap<>();
        for (PDPage page : order) {
            COSArray owners = new COSArray();
            marks.get(page).forEach(e -> owners.add(e.getCOSObject()));
            page.setStructParents(parents.size());
            parents.put(parents.size(), new PDParentTreeValue(owners));
        }
        PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(parents);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
        document.getDocumentCatalog().setStructureTreeRoot(root);
        PDMarkInfo info = new PDMarkInfo();
        info.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(info);
    }
}
