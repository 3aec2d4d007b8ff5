package meltkeeper.protocol;

/** Takes what a decoder makes of bytes, in order. */
public interface Outlet {

  void reading(Reading reading);

  void rejected(Rejected rejected);
}
