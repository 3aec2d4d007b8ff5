package meltkeeper.desk;

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
import meltkeeper.part.Because;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Nearest;

/**
 * An act about parts as a button, a scanner, the API or the page tells it: one JSON object, its
 * times as a person tells them.
 *
 * @param by who sent it, as it says itself; may be empty where nobody need say
 */
public record ToldAct(Verb verb, String by, JsonNode json) {

  private static final ObjectMapper MAPPER =
      JsonMapper.builder().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS).build();

  private static final double CLEANING_UNKNOWN = Double.NaN;

  /** What may be done, and the fields that belong to it. */
  public enum Verb {
    ADD,
    FIT,
    REMOVE,
    CLEAN,
    RETIRE,
    SWAP,
    BLAME,
    UNDO;

    private Set<String> fields() {
      return switch (this) {
        case ADD -> Set.of("kind", "variant", "part");
        case FIT -> Set.of("part", "printer", "hot_end", "at");
        case REMOVE ->
            Set.of("part", "printer", "hot_end", "kind", "because", "not_this_part", "at");
        case CLEAN -> Set.of("part", "restores", "at");
        case RETIRE, UNDO -> Set.of("part", "at");
        case SWAP -> Set.of("printer", "hot_end", "kind", "part", "because", "not_this_part", "at");
        case BLAME -> Set.of("part", "not_this_part", "at");
      };
    }

    /** As topics and addresses write it. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }

    /** All of them. */
    public static List<String> words() {
      return List.of(values()).stream().map(Verb::word).toList();
    }
  }

  /**
   * Reads an act of somebody who must say who it is.
   *
   * @param word the verb
   * @throws RefusedException with every fault
   */
  public static ToldAct signed(String word, String text) {
    JsonNode json = object(text);
    String by = json.path("by").asText("");
    ToldAct act = read(word, json);
    if (by.isEmpty()) {
      throw refused(signature(by));
    }
    return act;
  }

  /**
   * The one JSON object of a text.
   *
   * @throws RefusedException when it is anything else
   */
  public static JsonNode object(String text) {
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

  /**
   * Reads an act.
   *
   * @param word the verb
   * @throws RefusedException with every fault
   */
  public static ToldAct read(String word, JsonNode json) {
    Verb verb =
        List.of(Verb.values()).stream()
            .filter(one -> one.word().equals(word))
            .findFirst()
            .orElseThrow(() -> refused(unknown("verb", word, Verb.words())));
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
    if (!by.matches("[\\p{L}\\p{N} ._@-]{0,60}")) {
      faults.add(signature(by));
    }
    if (!faults.isEmpty()) {
      throw new RefusedException(faults);
    }
    return new ToldAct(verb, by, json);
  }

  private static Fault signature(String by) {
    return Fault.of("by", by, "who sends it: 1 to 60 letters, digits, spaces and . _ @ -");
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
  public PartChange done(Desk desk, When when) {
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
                  new RemovePart(which(), because(), isNotThisPart(), at(when)), when.nowNanos());
      case CLEAN ->
          desk.acts()
              .clean(
                  needed("part"),
                  json.path("restores").asDouble(CLEANING_UNKNOWN),
                  at(when),
                  when.nowNanos());
      case RETIRE -> desk.acts().retire(needed("part"), at(when), when.nowNanos());
      case SWAP ->
          desk.swaps()
              .swap(
                  new SwapParts(
                      needed("printer"),
                      hotEnd(),
                      needed("kind"),
                      text("part"),
                      because(),
                      isNotThisPart(),
                      at(when)),
                  when.nowNanos());
      case BLAME -> desk.swaps().blame(needed("part"), isNotThisPart(), at(when));
      case UNDO -> desk.acts().undo(needed("part"), at(when));
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

  private boolean isNotThisPart() {
    JsonNode told = json.path("not_this_part");
    if (!told.isMissingNode() && !told.isBoolean()) {
      throw refused(Fault.of("not_this_part", told.asText(), "true or false"));
    }
    return told.asBoolean(false);
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
