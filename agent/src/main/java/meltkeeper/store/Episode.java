package meltkeeper.store;

/**
 * One stretch of trouble, from its beginning to its all-clear. Alerts of one episode belong
 * together.
 *
 * @param beganNanos the time of the reading, or of the look, that began it
 */
public record Episode(AlertTopic topic, Subject subject, long beganNanos) {

  /** Twelve hexadecimal digits by which a receiver knows alerts that belong together. */
  public String id() {
    return Ids.of(key());
  }

  /** One text for each episode. */
  public String key() {
    return topic.label() + " " + subject.written() + " " + beganNanos;
  }
}
