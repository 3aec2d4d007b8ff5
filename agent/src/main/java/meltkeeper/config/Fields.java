package meltkeeper.config;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Nearest;

/**
 * The values of a section with fixed keys. Whatever is wrong is told to the section's faults, and a
 * value that can be built on is given all the same, so that one pass finds every fault.
 */
final class Fields {

  private final Entry section;
  private final Map<String, Entry> children;

  private Fields(Entry section, Map<String, Entry> children) {
    this.section = section;
    this.children = children;
  }

  /** Opens a section and tells the keys that it may not have. */
  static Fields of(Entry entry, Section section) {
    Map<String, Entry> children = entry.children();
    List<String> labels = section.labels();
    children.forEach(
        (label, child) -> {
          if (!labels.contains(label)) {
            tellUnknown(child, label, labels);
          }
        });
    return new Fields(entry, Collections.unmodifiableMap(children));
  }

  private static void tellUnknown(Entry child, String label, List<String> labels) {
    if (label.equals("<<")) {
      child
          .faults()
          .add(
              child.line(),
              Fault.of(
                  child.path(),
                  "a merge key",
                  "keys written out",
                  "or an alias, *name, in the place of a whole section"));
      return;
    }
    Optional<String> nearest = Nearest.to(label, labels).map(known -> "the nearest is " + known);
    Optional<String> elsewhere =
        Keys.ALL.stream()
            .filter(key -> key.label().equals(label))
            .map(key -> label + " belongs in " + key.section().path())
            .findFirst();
    child
        .faults()
        .add(
            child.line(),
            Fault.of(
                child.path(),
                "the key " + label,
                String.join(", ", labels),
                Stream.of(nearest, elsewhere)
                    .flatMap(Optional::stream)
                    .collect(Collectors.joining("; "))));
  }

  Entry section() {
    return section;
  }

  /** All that the section holds, by key. */
  Map<String, Entry> children() {
    return children;
  }

  boolean has(Key<?> key) {
    return children.containsKey(key.label());
  }

  /** The entry of a key that stands in the file. */
  Optional<Entry> entry(Key<?> key) {
    return Optional.ofNullable(children.get(key.label()));
  }

  /** The entry of a key, or an empty section in its place. */
  Entry entryOrBlank(Key<?> key) {
    return entry(key).orElseGet(() -> Document.blank(section, key.label()));
  }

  /** The value; empty when the key is absent or its value has a fault. */
  <T> Optional<T> find(Key<T> key) {
    return entry(key).flatMap(entry -> read(entry, key.form()));
  }

  /** The value, or the default. */
  <T> T get(Key<T> key) {
    return find(key).orElseGet(key::defaultValue);
  }

  /** The value of a key that must be there. */
  <T> Optional<T> need(Key<T> key) {
    if (!has(key)) {
      section.tellMissing(key);
    }
    return find(key);
  }

  /** The value of one entry; empty after telling its fault. */
  static <T> Optional<T> read(Entry entry, Form<T> form) {
    Optional<String> text = entry.text();
    if (text.isEmpty()) {
      entry.tell(entry.shown(), form.allowed(), "");
      return Optional.empty();
    }
    Optional<Fault> fault = form.check().apply(text.get());
    fault.ifPresent(entry::tell);
    return fault.isPresent() ? Optional.empty() : text.map(form::read);
  }
}
