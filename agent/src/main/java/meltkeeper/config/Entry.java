package meltkeeper.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.protocol.Fault;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;

/**
 * One value in the file.
 *
 * @param path keys from the top, {@code brokers.shop.url}; empty for the whole file
 * @param line of its key, counted from 1
 * @param faults where its faults are told
 */
record Entry(String path, int line, Node node, Faults faults) {

  /** What a section is, in words. */
  static final String A_SECTION = "a section: keys, each with a colon and a value";

  static int lineOf(Node node) {
    return node.getStartMark().getLine() + 1;
  }

  /** True for a key with nothing behind it. */
  boolean isBlank() {
    return node.getTag().equals(Tag.NULL) && node instanceof ScalarNode;
  }

  /** The text of a plain value, quoted or not; empty for a section, a list, and nothing. */
  Optional<String> text() {
    return node instanceof ScalarNode scalar && !isBlank()
        ? Optional.of(scalar.getValue())
        : Optional.empty();
  }

  boolean isList() {
    return node instanceof SequenceNode;
  }

  boolean isSection() {
    return node instanceof MappingNode;
  }

  /** What a person sees there. */
  String shown() {
    if (isBlank()) {
      return "nothing";
    }
    return text().orElse(isList() ? "a list" : "a section");
  }

  /** Tells a fault found in this value; the fault's own key gives way to the path. */
  void tell(Fault fault) {
    faults.add(
        isBlank() ? line : lineOf(node),
        new Fault("", path, fault.found(), fault.allowed(), fault.mend()));
  }

  /** Tells a fault whose key leads on from here, at the line where that key stands. */
  void tellBelow(Fault fault) {
    faults.add(lineBelow(fault.key()), fault.within(path));
  }

  private int lineBelow(String keys) {
    int dot = keys.indexOf('.');
    String label = dot < 0 ? keys : keys.substring(0, dot);
    if (node instanceof MappingNode section) {
      for (NodeTuple tuple : section.getValue()) {
        if (tuple.getKeyNode() instanceof ScalarNode key && key.getValue().equals(label)) {
          int keyLine = lineOf(key);
          return dot < 0
              ? keyLine
              : new Entry(label, keyLine, tuple.getValueNode(), faults)
                  .lineBelow(keys.substring(dot + 1));
        }
      }
    }
    return line;
  }

  void tell(String found, String allowed, String mend) {
    tell(Fault.of("", found, allowed, mend));
  }

  /** Tells that a key is missing here. */
  void tellMissing(Key<?> key) {
    faults.add(
        line,
        Fault.of(
            below(key.label()), "nothing", key.form().allowed(), "add the key " + key.label()));
  }

  String below(String label) {
    return path.isEmpty() ? label : path + "." + label;
  }

  /** The elements of a list. */
  List<Entry> elements() {
    List<Entry> elements = new ArrayList<>();
    if (node instanceof SequenceNode list) {
      for (Node element : list.getValue()) {
        elements.add(
            new Entry(path + "[" + elements.size() + "]", lineOf(element), element, faults));
      }
    }
    return elements;
  }

  /**
   * What a section holds, by key; tells what is no section, a key that is no text or comes twice.
   */
  Map<String, Entry> children() {
    Map<String, Entry> children = new LinkedHashMap<>();
    if (node instanceof MappingNode section) {
      for (NodeTuple tuple : section.getValue()) {
        addChild(tuple, children);
      }
    } else if (!isBlank()) {
      tell(shown(), A_SECTION, "");
    }
    return children;
  }

  private void addChild(NodeTuple tuple, Map<String, Entry> children) {
    int keyLine = lineOf(tuple.getKeyNode());
    if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
      faults.add(keyLine, Fault.of(path, "a list or a section as a key", "a plain key"));
      return;
    }
    String label = key.getValue();
    Entry child = new Entry(below(label), keyLine, tuple.getValueNode(), faults);
    Entry first = children.putIfAbsent(label, child);
    if (first != null) {
      faults.add(
          keyLine,
          Fault.of(
              child.path,
              "the key a second time",
              "each key once",
              "it stands already in line " + first.line + "; remove one"));
    }
  }
}
