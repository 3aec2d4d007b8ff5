package meltkeeper.protocol;

/**
 * One message or line as it came off a wire, before anybody reads it. Recording taps here, and
 * replaying pours in here.
 *
 * @param retained true for a message that a broker kept from before
 */
public record Received(Origin origin, Payload payload, Arrival arrival, boolean retained) {

  /** A message or line that is news, not kept by a broker. */
  public static Received fresh(Origin origin, Payload payload, Arrival arrival) {
    return new Received(origin, payload, arrival, false);
  }
}
