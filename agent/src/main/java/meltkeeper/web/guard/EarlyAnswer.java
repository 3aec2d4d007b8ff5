package meltkeeper.web.guard;

import java.nio.ByteBuffer;
import java.util.concurrent.CompletableFuture;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.MetaData;
import org.eclipse.jetty.http.MultiPartFormData;
import org.eclipse.jetty.server.ConnectionMetaData;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpStream;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.util.Callback;

/**
 * Sees to it that an answer given before the whole body was read arrives: where the server would
 * close the connection at once, it is left to {@link Leftover}.
 */
final class EarlyAnswer implements HttpConfiguration.Customizer {

  @Override
  public Request customize(Request request, HttpFields.Mutable answerHeaders) {
    request.addHttpStreamWrapper(stream -> new Heard(stream, request));
    return request;
  }

  private static final class Heard extends HttpStream.Wrapper {

    private static final String FORM = MultiPartFormData.class.getName();

    private final Request request;
    private volatile boolean answered;

    Heard(HttpStream stream, Request request) {
      super(stream);
      this.request = request;
    }

    @Override
    public void send(
        MetaData.Request asked,
        MetaData.Response answer,
        boolean last,
        ByteBuffer content,
        Callback callback) {
      if (last) {
        forgetBrokenForm();
      }
      super.send(asked, answer, last, content, last ? noting(callback) : callback);
    }

    /** The server trips over a form that failed when it tidies up, and then closes at once. */
    private void forgetBrokenForm() {
      if (request.getAttribute(FORM) instanceof CompletableFuture<?> form
          && form.isCompletedExceptionally()) {
        request.removeAttribute(FORM);
      }
    }

    private Callback noting(Callback callback) {
      return new Callback.Nested(callback) {
        @Override
        public void succeeded() {
          answered = true;
          super.succeeded();
        }
      };
    }

    /** Once the answer is out, all that can have failed is the reading of the body. */
    @Override
    public void failed(Throwable why) {
      if (answered) {
        request.setAttribute(UPGRADE_CONNECTION_ATTRIBUTE, leftover());
        super.succeeded();
      } else {
        super.failed(why);
      }
    }

    private Leftover leftover() {
      ConnectionMetaData told = request.getConnectionMetaData();
      return new Leftover(
          told.getConnection().getEndPoint(), told.getConnector().getExecutor(), System::nanoTime);
    }
  }
}
