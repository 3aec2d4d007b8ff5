package meltkeeper.protocol;

/** Where bytes came from. */
public sealed interface Origin {

  /** Names the place in a message to a person. */
  String describe();

  /** A broker's message. */
  record Topic(String broker, String topic) implements Origin {
    @Override
    public String describe() {
      return "topic " + topic + " on broker " + broker;
    }
  }

  /** A line exchanged with a printer. */
  record Line(String printer, Direction direction) implements Origin {
    @Override
    public String describe() {
      return "line " + (direction == Direction.IN ? "from " : "to ") + printer;
    }
  }

  /** Which way a line went. */
  enum Direction {
    /** From the printer. */
    IN,
    /** To the printer. */
    OUT
  }
}
