package meltkeeper.protocol.mapping;

import java.util.List;

/**
 * How to read what one sort of printer publishes. Where several rules match a topic, all apply.
 *
 * @param name its name in the configuration
 * @param rules one for each topic pattern
 */
public record Mapping(String name, List<MessageRule> rules) {

  public Mapping {
    rules = List.copyOf(rules);
  }
}
