package meltkeeper.plot;

/**
 * The plot in words, for those who hear the page. A browser also shows the title on hovering.
 *
 * @param title what is drawn, in a few words
 * @param description what can be seen in it, in a sentence or two with the main figures
 */
public record Words(String title, String description) {

  public Words {
    Check.text("a plot's title", title);
    Check.text("the description of plot \"" + title + "\"", description);
  }
}
