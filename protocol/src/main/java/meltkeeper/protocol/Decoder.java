package meltkeeper.protocol;

/**
 * Turns bytes into readings. May remember what it needs of earlier ones; not safe for use by
 * several threads. Never throws for bad bytes: it tells the outlet.
 */
public interface Decoder {

  void decode(Received received, Outlet outlet);
}
