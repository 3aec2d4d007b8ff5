package meltkeeper.config;

import java.util.List;
import java.util.Optional;
import meltkeeper.protocol.Fault;
import org.yaml.snakeyaml.DumperOptions.FlowStyle;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.resolver.Resolver;

/** A YAML text as a tree that still knows its lines. */
final class Document {

  /** Longest text, characters; a configuration of a thousand printers has a tenth of it. */
  static final int MAX_LENGTH = 1_000_000;

  private static final int MAX_DEPTH = 20;
  private static final int MAX_ALIASES = 200;

  private Document() {}

  /** The whole file; empty after telling why there is none. */
  static Optional<Entry> compose(String text, Faults faults) {
    if (text.length() > MAX_LENGTH) {
      faults.add(
          1, Fault.of("", text.length() + " characters", "at most " + MAX_LENGTH + " characters"));
      return Optional.empty();
    }
    String bare = text.startsWith("\uFEFF") ? text.substring(1) : text;
    try {
      Node root = composer(bare).getSingleNode();
      if (root == null || new Entry("", 1, root, faults).isBlank()) {
        faults.add(
            1,
            Fault.of(
                "",
                "an empty file",
                "at least the section printers",
                "docs/configure.md begins with an example"));
        return Optional.empty();
      }
      Entry file = new Entry("", Entry.lineOf(root), root, faults);
      if (!file.isSection()) {
        file.tell(file.shown(), Entry.A_SECTION, "begin with printers: as docs/configure.md does");
        return Optional.empty();
      }
      return Optional.of(file);
    } catch (YAMLException e) {
      YamlTrouble trouble = YamlTrouble.of(e, bare);
      faults.add(trouble.line(), trouble.fault());
      return Optional.empty();
    }
  }

  private static Composer composer(String text) {
    LoaderOptions limits = new LoaderOptions();
    limits.setCodePointLimit(MAX_LENGTH);
    limits.setNestingDepthLimit(MAX_DEPTH);
    limits.setMaxAliasesForCollections(MAX_ALIASES);
    return new Composer(new ParserImpl(new StreamReader(text), limits), new Resolver(), limits);
  }

  /** An empty section where a file has none. */
  static Entry blank(Entry parent, String label) {
    Node node =
        new MappingNode(
            Tag.MAP,
            true,
            List.of(),
            parent.node().getStartMark(),
            parent.node().getEndMark(),
            FlowStyle.BLOCK);
    return new Entry(parent.below(label), parent.line(), node, parent.faults());
  }
}
