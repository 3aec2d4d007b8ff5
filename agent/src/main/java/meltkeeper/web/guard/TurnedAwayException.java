package meltkeeper.web.guard;

/** A request that may not pass. */
public final class TurnedAwayException extends RuntimeException {

  private final int status;

  private TurnedAwayException(int status, String message) {
    super(message);
    this.status = status;
  }

  /** Meant for another host. */
  static TurnedAwayException misdirected(String host) {
    return new TurnedAwayException(
        421,
        "Host: found \""
            + host
            + "\"; allowed: an address, localhost, or a name that http.names lists; add the name"
            + " there if it is this computer's");
  }

  /** A write that another site makes a browser send. */
  static TurnedAwayException foreign(String origin) {
    return new TurnedAwayException(
        403,
        "Origin: found \""
            + origin
            + "\"; allowed: a write from this page itself, or one with a JSON body from a program");
  }

  /** A write from elsewhere, while there is no token that would allow it. */
  static TurnedAwayException noToken() {
    return new TurnedAwayException(
        403,
        "Writes from other computers need a token, and none is set; make one with meltkeeper token"
            + " FILE and name the file in http.token-file");
  }

  /** The token is missing or another. */
  static TurnedAwayException unknown() {
    return new TurnedAwayException(
        401,
        "Authorization: found no token that is known here; allowed: Authorization: Bearer TOKEN, or"
            + " a browser that entered it at "
            + Guard.ENTRANCE);
  }

  /** The HTTP status that says so. */
  public int status() {
    return status;
  }
}
