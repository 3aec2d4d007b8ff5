package meltkeeper.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import meltkeeper.desk.AddPart;
import meltkeeper.desk.Desk;
import meltkeeper.desk.FitPart;
import meltkeeper.desk.PartChange;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.RemovePart;
import meltkeeper.desk.When;
import meltkeeper.part.Because;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Nearest;

/**
 * A command about parts as a button or a scanner sends it: one JSON object.
 *
 * @param by who sent it, as it says itself
 */
record ButtonCommand(Verb verb, String by, JsonNode json) {

  private static final ObjectMapper MAPPER =
      JsonMapper.builder().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS).build();

  private static final double CLEANING_UNKNOWN = Double.NaN;

  /** What may be done, and the fields that belong to it. */
  enum Verb {
    ADD,
    FIT,
    REMOVE,
    CLEAN,
    RETIRE;

    private Set<String> fields() {
      return switch (this) {
        case ADD -> Set.of("kind", "variant", "part");
        case FIT -> Set.of("part", "printer", "hot_end", "at");
        case REMOVE ->
            Set.of("part", "printer", "hot_end", "kind", "because", "not_this_part", "at");
        case CLEAN -> Set.of("part", "restores", "at");
        case RETIRE -> Set.of("part", "at");
      };
    }

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }

    static List<String> words() {
      return List.of(values()).stream().map(Verb::word).toList();
    }
  }

  /**
   * Reads a command.
   *
   * @param word the last level of its topic
   * @throws RefusedException with every fault
   */
  static ButtonCommand read(String word, String text) {
    Verb verb =
        List.of(Verb.values()).stream()
            .filter(one -> one.word().equals(word))
            .findFirst()
            .orElseThrow(() -> refused(unknown("topic", word, Verb.words())));
    JsonNode json = parsed(text);
    List<Fault> faults = new ArrayList<>();
    Set<String> allowed = new LinkedHashSet<>(verb.fields());
    allowed.add("by");
    json.fieldNames()
        .forEachRemaining(
            field -> {
              if (!allowed.contains(field)) {
                faults.add(unknown(field, field, allowed.stream().sorted().toList()));
              }
            });
    String by = json.path("by").asText("");
    if (!by.matches("[\\p{L}\\p{N} ._@-]{1,60}")) {
      faults.add(Fault.of("by", by, "who sends it: 1 to 60 letters, digits, spaces and . _ @ -"));
    }
    if (!faults.isEmpty()) {
      throw new RefusedException(faults);
    }
    return new ButtonCommand(verb, by, json);
  }

  private static JsonNode parsed(String text) {
    try {
      JsonNode json = MAPPER.readTree(text);
      if (json != null && json.isObject()) {
        return json;
      }
    } catch (JsonProcessingException e) {
      throw refused(Fault.of("", text, "one JSON object", e.getOriginalMessage()));
    }
    throw refused(Fault.of("", text, "one JSON object"));
  }

  private static RefusedException refused(Fault fault) {
    return new RefusedException(List.of(fault));
  }

  private static Fault unknown(String key, String found, List<String> known) {
    return Fault.of(
        key,
        found,
        "one of " + String.join(", ", known),
        Nearest.to(found, known).map(near -> "the nearest is " + near).orElse(""));
  }

  /** Does it at the desk. */
  PartChange done(Desk desk, When when) {
    return switch (verb) {
      case ADD ->
          desk.acts()
              .add(
                  new AddPart(text("kind").orElse(""), text("part"), text("variant")),
                  when.nowNanos());
      case FIT ->
          desk.acts()
              .fit(
                  new FitPart(
                      needed("part"),
                      needed("printer"),
                      hotEnd(),
                      at(when),
                      Optional.empty(),
                      Optional.empty()),
                  when.nowNanos());
      case REMOVE ->
          desk.acts()
              .remove(
                  new RemovePart(
                      which(), because(), json.path("not_this_part").asBoolean(false), at(when)),
                  when.nowNanos());
      case CLEAN ->
          desk.acts()
              .clean(
                  needed("part"),
                  json.path("restores").asDouble(CLEANING_UNKNOWN),
                  at(when),
                  when.nowNanos());
      case RETIRE -> desk.acts().retire(needed("part"), at(when), when.nowNanos());
    };
  }

  private RemovePart.Which which() {
    Optional<String> part = text("part");
    return part.isPresent()
        ? new RemovePart.Which.Id(part.get())
        : new RemovePart.Which.HeldBy(needed("printer"), hotEnd(), needed("kind"));
  }

  private Because because() {
    String word = needed("because");
    return Because.ofWord(word)
        .orElseThrow(
            () ->
                refused(
                    unknown(
                        "because",
                        word,
                        List.of(Because.values()).stream().map(Because::word).toList())));
  }

  private int hotEnd() {
    JsonNode index = json.path("hot_end");
    if (!index.isMissingNode() && !index.isInt()) {
      throw refused(Fault.of("hot_end", index.asText(), "a whole number, the first being 0"));
    }
    return index.asInt(0);
  }

  private OptionalLong at(When when) {
    Optional<String> told = text("at");
    return told.isPresent() ? OptionalLong.of(when.at("at", told.get())) : OptionalLong.empty();
  }

  private Optional<String> text(String field) {
    return Optional.ofNullable(json.get(field)).filter(JsonNode::isTextual).map(JsonNode::asText);
  }

  private String needed(String field) {
    return text(field)
        .orElseThrow(
            () -> refused(Fault.of(field, json.path(field).toString(), "a text; it is missing")));
  }
}
