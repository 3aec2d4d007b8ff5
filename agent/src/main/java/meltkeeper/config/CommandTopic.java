package meltkeeper.config;

import java.time.Duration;

/**
 * Where buttons and scanners send what was done with parts.
 *
 * @param broker by its name in the configuration
 * @param prefix of the topics; the command's word is the next level
 */
public record CommandTopic(String broker, String prefix) {

  /** The level on which those are answered that name no topic for it. */
  public static final String ANSWER = "answer";

  /** For each answer of the broker. */
  public Duration timeout() {
    return Duration.ofSeconds(10);
  }
}
