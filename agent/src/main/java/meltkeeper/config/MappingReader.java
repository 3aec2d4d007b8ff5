package meltkeeper.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Signal;
import meltkeeper.protocol.mapping.JsonPath;
import meltkeeper.protocol.mapping.Mapping;
import meltkeeper.protocol.mapping.MessageRule;
import meltkeeper.protocol.mapping.PayloadForm;
import meltkeeper.protocol.mapping.TimeFormat;
import meltkeeper.protocol.mapping.TimeRule;
import meltkeeper.protocol.mapping.TopicPattern;
import meltkeeper.protocol.mapping.ValueRule;

/** Reads one mapping: a list of rules, one for each topic. */
final class MappingReader {

  private static final Form<JobState> STATE = Form.choice(JobState.class, JobState::word);

  private MappingReader() {}

  /** The mapping of those rules that have no fault. */
  static Mapping read(String name, Entry entry) {
    if (!entry.isList() || entry.elements().isEmpty()) {
      entry.tell(
          entry.shown(),
          "a list of rules, one or more",
          "begin each rule with a dash: - topic: plant/{printer}/status");
    }
    List<MessageRule> rules = new ArrayList<>();
    entry.elements().forEach(rule -> readRule(rule).ifPresent(rules::add));
    return new Mapping(name, rules);
  }

  private static Optional<MessageRule> readRule(Entry entry) {
    Fields fields = Fields.of(entry, Section.RULE);
    Optional<TopicPattern> topic = fields.need(Keys.TOPIC);
    PayloadForm payload = fields.get(Keys.PAYLOAD);
    Optional<TimeRule> time = fields.entry(Keys.TIME).flatMap(MappingReader::readTime);
    if (!fields.has(Keys.READ)) {
      entry.tellMissing(Keys.READ);
      return Optional.empty();
    }
    Fields signals = Fields.of(fields.entryOrBlank(Keys.READ), Section.READ);
    List<ValueRule> values = new ArrayList<>();
    boolean allRead = true;
    for (Map.Entry<String, Entry> child : signals.children().entrySet()) {
      Optional<Signal> signal = Signal.ofLabel(child.getKey());
      List<Entry> places =
          child.getValue().isList() ? child.getValue().elements() : List.of(child.getValue());
      for (Entry place : places) {
        Optional<ValueRule> value = signal.flatMap(known -> readValue(known, place));
        value.ifPresent(values::add);
        allRead &= value.isPresent();
      }
    }
    return allRead ? rule(fields, topic, payload, time, values) : Optional.empty();
  }

  private static Optional<MessageRule> rule(
      Fields fields,
      Optional<TopicPattern> topic,
      PayloadForm payload,
      Optional<TimeRule> time,
      List<ValueRule> values) {
    Optional<Fault> fault = MessageRule.fault(payload, time, values);
    fault.ifPresent(found -> fields.section().tellBelow(found));
    return fault.isPresent()
        ? Optional.empty()
        : topic.map(pattern -> new MessageRule(pattern, payload, time, values));
  }

  private static Optional<TimeRule> readTime(Entry entry) {
    Fields fields = Fields.of(entry, Section.TIME);
    Optional<JsonPath> at = fields.need(Keys.TIME_AT);
    Optional<TimeFormat> format = fields.need(Keys.FORMAT);
    return at.flatMap(place -> format.map(form -> new TimeRule(place, form)));
  }

  private static Optional<ValueRule> readValue(Signal signal, Entry entry) {
    if (!entry.isSection()) {
      return Fields.read(entry, Keys.VALUE_AT.form()).map(at -> ValueRule.plain(signal, at));
    }
    Fields fields = Fields.of(entry, Section.VALUE);
    Optional<JsonPath> at = fields.need(Keys.VALUE_AT);
    double scale = fields.get(Keys.SCALE);
    double offset = fields.get(Keys.OFFSET);
    int hotEnd = fields.get(Keys.HOT_END_INDEX);
    Map<String, JobState> words = new LinkedHashMap<>();
    fields
        .entryOrBlank(Keys.WORDS)
        .children()
        .forEach(
            (word, meaning) ->
                Fields.read(meaning, STATE).ifPresent(state -> words.put(word, state)));
    Optional<Fault> fault = ValueRule.fault(signal, scale, offset, words, hotEnd);
    fault.ifPresent(entry::tellBelow);
    return fault.isPresent()
        ? Optional.empty()
        : at.map(place -> new ValueRule(signal, place, scale, offset, words, hotEnd));
  }
}
