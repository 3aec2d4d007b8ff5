package meltkeeper.web.page;

/**
 * Where a browser shows its token.
 *
 * @param to the place to go on to
 * @param wrong true when the last token was another
 */
public record EnterPage(String to, boolean wrong) {}
