package meltkeeper.plot;

/**
 * The stylesheet of all plots, once a page.
 *
 * <p>A later rule for {@code .plot} may set each variable anew: {@code --plot-1} to {@code
 * --plot-4} are the lines' colours, the first also that of band, bars and gauge; {@code
 * --plot-alarm} is that of crosses and of a gauge over its limit; {@code --plot-mark} that of the
 * mark. Everything else is drawn in the page's own text colour. Each colour stands at 4.5 to 1 or
 * more against its ground, white or near black.
 */
public final class PlotStyle {

  /** A few rules, all below the class {@code plot}; for a {@code <style>} element or a file. */
  public static final String CSS =
      """
      .plot{--plot-1:#1c639e;--plot-2:#a34a00;--plot-3:#1b6e53;--plot-4:#7c3f8c;\
      --plot-alarm:#b3261e;--plot-mark:#7c3f8c;\
      max-width:100%;height:auto;font-family:inherit}
      .plot-small{vertical-align:middle}
      .plot-1{color:var(--plot-1)}
      .plot-2{color:var(--plot-2)}
      .plot-3{color:var(--plot-3)}
      .plot-4{color:var(--plot-4)}
      .plot-cross,.plot-over{color:var(--plot-alarm)}
      .plot-mark{color:var(--plot-mark)}
      .plot-grid{opacity:.15}
      .plot-axis{opacity:.6}
      .plot-line{stroke-linejoin:round}
      @media (prefers-color-scheme:dark){
      .plot{--plot-1:#7dbcf0;--plot-2:#f2a766;--plot-3:#6fcfab;--plot-4:#d7a5e6;\
      --plot-alarm:#ff8a80;--plot-mark:#d7a5e6}
      }
      """;

  private PlotStyle() {}
}
