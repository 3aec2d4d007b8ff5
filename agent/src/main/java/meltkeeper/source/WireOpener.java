package meltkeeper.source;

import java.io.IOException;

/** Makes a connection to one printer, again and again. */
public interface WireOpener {

  /**
   * Opens it, and gives up in a few seconds or when the thread is interrupted.
   *
   * @throws IOException saying what stands in the way
   */
  Wire open() throws IOException;

  /** The device or address, for a person. */
  String place();
}
