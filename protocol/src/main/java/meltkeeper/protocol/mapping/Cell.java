package meltkeeper.protocol.mapping;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.io.NumberInput;
import java.io.IOException;

/**
 * What stood at one place of the message being read; used again for the next message.
 *
 * <p>A field that is missing, or null, leaves the cell empty.
 */
final class Cell {

  /** The longest text taken, in characters. */
  static final int MAX_TEXT = 1_024;

  private enum Content {
    NOTHING,
    NUMBER,
    TEXT,
    LONG_TEXT,
    STRUCTURE
  }

  private final boolean asText;
  private Content content = Content.NOTHING;
  private double number;
  private String text = "";

  /**
   * An empty cell.
   *
   * @param asText true when a number is wanted in the digits it was written with
   */
  Cell(boolean asText) {
    this.asText = asText;
  }

  void clear() {
    content = Content.NOTHING;
  }

  boolean isEmpty() {
    return content == Content.NOTHING;
  }

  /** True when the text is over the limit; it is then cut. */
  boolean isTooLong() {
    return content == Content.LONG_TEXT;
  }

  /** True for a value, false for an object or a list. */
  boolean isScalar() {
    return content != Content.STRUCTURE;
  }

  /** The number, also one written as text; NaN when it is none. */
  double number() {
    return content == Content.NUMBER ? number : parsed(text.strip());
  }

  /** The value as text, or what it is instead. */
  String text() {
    return content == Content.NUMBER && !asText ? Double.toString(number) : text;
  }

  /** Takes the value at the parser's token, an object or a list only by its name. */
  void take(JsonParser in, JsonToken token) throws IOException {
    switch (token) {
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> {
        content = Content.NUMBER;
        number = in.getDoubleValue();
        if (asText) {
          text = in.getText();
        }
      }
      case VALUE_STRING -> takeText(in);
      case VALUE_TRUE, VALUE_FALSE -> {
        content = Content.TEXT;
        text = token == JsonToken.VALUE_TRUE ? "true" : "false";
      }
      case START_OBJECT -> {
        content = Content.STRUCTURE;
        text = "an object";
      }
      case START_ARRAY -> {
        content = Content.STRUCTURE;
        text = "a list";
      }
      default -> clear();
    }
  }

  /** Takes a text as the value. */
  void take(String value) {
    boolean fits = value.length() <= MAX_TEXT;
    content = fits ? Content.TEXT : Content.LONG_TEXT;
    text = fits ? value : value.substring(0, MAX_TEXT);
  }

  /** Keeps the text of the message before when it is the same, as names and states mostly are. */
  private void takeText(JsonParser in) throws IOException {
    if (in.getTextLength() == text.length() && isText(in.getTextCharacters(), in.getTextOffset())) {
      content = Content.TEXT;
    } else {
      take(in.getText());
    }
  }

  private boolean isText(char[] characters, int from) {
    for (int i = 0; i < text.length(); i++) {
      if (characters[from + i] != text.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private static double parsed(String text) {
    return Decimal.isDecimal(text) ? NumberInput.parseDouble(text, true) : Double.NaN;
  }
}
