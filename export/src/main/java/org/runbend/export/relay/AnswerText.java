package org.runbend.export.relay;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Map;
import java.util.Optional;

/** Answers by their keys as one text. */
final class AnswerText {
    private static final ObjectMapper JSON = new ObjectMapper();

    private AnswerText() {}

    static String of(Map<String, String> answers) {
        try {
            return JSON.writeValueAsString(answers);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Those of a text; none where it is missing or damaged, they are found again then. */
    static Map<String, String> of(Optional<String> text) {
        try {
            return text.isEmpty() ? Map.of() : JSON.readValue(text.get(), new TypeReference<Map<String, String>>() {});
        } catch (JsonProcessingException e) {
            return Map.of();
        }
    }
}
