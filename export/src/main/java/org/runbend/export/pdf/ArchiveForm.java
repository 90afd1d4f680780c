package org.runbend.export.pdf;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.xml.transform.TransformerException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.xmpbox.XMPMetadata;
import org.apache.xmpbox.schema.PDFAIdentificationSchema;
import org.apache.xmpbox.type.BadFieldValueException;
import org.apache.xmpbox.xml.XmpSerializer;

/** What makes a document one that can be kept: ISO 19005-2, level B (metadata that say so, and what its colours mean). */
final class ArchiveForm {
    private static final int PART = 2;
    private static final String LEVEL = "B";
    private static final String COLOURS = "sRGB IEC61966-2.1";

    private ArchiveForm() {}

    static void apply(PDDocument document, String title, String language) throws IOException {
        try {
            XMPMetadata about = XMPMetadata.createXMPMetadata();
            about.createAndAddDublinCoreSchema().setTitle(title);
            about.getDublinCoreSchema().addLanguage(language);
            PDFAIdentificationSchema form = about.createAndAddPDFAIdentificationSchema();
            form.setPart(PART);
            form.setConformance(LEVEL);
            ByteArrayOutputStream xml = new ByteArrayOutputStream();
            new XmpSerializer().serialize(about, xml, true);
            PDMetadata metadata = new PDMetadata(document);
            metadata.importXMPMetadata(xml.toByteArray());
            document.getDocumentCatalog().setMetadata(metadata);
        } catch (BadFieldValueException | TransformerException e) {
            throw new IOException(e);
        }
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        PDOutputIntent intent = new PDOutputIntent(document, new ByteArrayInputStream(profile));
        intent.setInfo(COLOURS);
        intent.setOutputCondition(COLOURS);
        intent.setOutputConditionIdentifier(COLOURS);
        document.getDocumentCatalog().addOutputIntent(intent);
    }
}
