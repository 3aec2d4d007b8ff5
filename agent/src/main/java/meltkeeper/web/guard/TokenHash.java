package meltkeeper.web.guard;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * What is kept of the token that writes need: its SHA-256, so that a stolen file gives nothing
 * away. A token is 32 random bytes, which no one can find by trying. Compared in constant time.
 */
public final class TokenHash {

  /** What stands before the digits in a file. */
  public static final String MARK = "sha256:";

  /** What a file may hold. */
  public static final String ALLOWED =
      MARK + " and 64 hexadecimal digits, as meltkeeper token writes them";

  private static final int BYTES = 32;
  private static final String MAC = "HmacSHA256";
  private static final HexFormat HEX = HexFormat.of();

  private final byte[] hash;

  private TokenHash(byte[] hash) {
    this.hash = hash;
  }

  /** A token that nobody has seen. */
  public static String freshToken(SecureRandom random) {
    byte[] bytes = new byte[BYTES];
    random.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** What is to be kept of a token. */
  public static TokenHash of(String token) {
    return new TokenHash(digest(token));
  }

  /** The hash of a file's text; empty when it is none. */
  public static Optional<TokenHash> read(String text) {
    String line = text.strip();
    return line.matches(MARK + "[0-9a-f]{64}")
        ? Optional.of(new TokenHash(HEX.parseHex(line, MARK.length(), line.length())))
        : Optional.empty();
  }

  /** As a file holds it. */
  public String written() {
    return MARK + HEX.formatHex(hash);
  }

  /** True for the token itself. */
  public boolean matches(String token) {
    return MessageDigest.isEqual(hash, digest(token));
  }

  /** A pass for a browser: valid until a time, and for as long as the token is the same. */
  String pass(long untilSeconds) {
    return untilSeconds + "." + HEX.formatHex(seal(untilSeconds));
  }

  /** True for a pass of this token that is still valid. */
  boolean admits(String pass, long nowSeconds) {
    int dot = pass.indexOf('.');
    if (dot < 1 || !pass.matches("[0-9]{1,12}\\.[0-9a-f]{64}")) {
      return false;
    }
    long until = Long.parseLong(pass.substring(0, dot));
    byte[] told = HEX.parseHex(pass, dot + 1, pass.length());
    return MessageDigest.isEqual(seal(until), told) && nowSeconds < until;
  }

  private byte[] seal(long untilSeconds) {
    try {
      Mac mac = Mac.getInstance(MAC);
      mac.init(new SecretKeySpec(hash, MAC));
      return mac.doFinal(("pass " + untilSeconds).getBytes(StandardCharsets.US_ASCII));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has " + MAC, e);
    }
  }

  private static byte[] digest(String token) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** Tells nothing. */
  @Override
  public String toString() {
    return "(hidden)";
  }
}
